// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.List;
import org.raftgauge.core.agreement.Cusum;

/**
 * What new weighings say of a grader.
 *
 * @param advice what to do
 * @param why in words
 * @param weighings number of new weighings that it could tell
 * @param notTold those that it could not, in words
 * @param biasShare by how much it reads too heavy, as a share; -0.05 is 5 % too light
 * @param biasLo95 lower end of the 95 % interval, the grader's own error included
 * @param biasHi95 upper end
 * @param lowerShare lower limit of agreement of single plants
 * @param upperShare upper limit
 * @param outside number of weighings outside their 95 % interval, the common bias taken out
 * @param drift CUSUM of {@code ln weighed - ln predicted} over its standard deviation, in time
 *     order
 * @param suspects weighings to look at first
 */
public record GraderCheck(
    Advice advice,
    String why,
    int weighings,
    List<String> notTold,
    double biasShare,
    double biasLo95,
    double biasHi95,
    double lowerShare,
    double upperShare,
    int outside,
    Cusum drift,
    List<Suspect> suspects) {

  /** What to do with the grader. */
  public enum Advice {
    /** It still holds. */
    KEEP("keep"),
    /** Its numbers have moved: fit it again with the new weighings. */
    REFIT("refit"),
    /** Something else is wrong: look before refitting. */
    INVESTIGATE("investigate"),
    /** Too few plants were weighed to tell. */
    WEIGH("weigh plants");

    private final String word;

    Advice(String word) {
      this.word = word;
    }

    /** Returns it as said to people. */
    public String word() {
      return word;
    }
  }

  /** Copies the lists. */
  public GraderCheck {
    notTold = List.copyOf(notTold);
    suspects = List.copyOf(suspects);
  }
}
