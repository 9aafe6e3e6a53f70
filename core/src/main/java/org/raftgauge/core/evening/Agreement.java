// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.Call;
import org.raftgauge.core.statistics.CohensKappa;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/**
 * How the program's verdicts agree with the head grower's calls.
 *
 * @param cases every call with the verdict of its evening, in the order of the calls
 * @param kappa agreement beyond chance over the cases with a verdict, where it can be told
 * @param threshold which lagging share would agree best, where the calls can tell
 */
public record Agreement(
    List<Case> cases, Optional<CohensKappa> kappa, Optional<Threshold> threshold) {

  /** Copies the list. */
  public Agreement {
    cases = List.copyOf(cases);
  }

  /**
   * A call and what the program said.
   *
   * @param call the grower's
   * @param judged the program's of the same evening, seeing nothing later; absent where the plant
   *     was not photographed then
   */
  public record Case(Call call, Optional<Judged> judged) {

    /** Returns the grower's word. */
    public Verdict called() {
      return Verdict.valueOf(call.call().toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    /** Says whether both said the same; false where the program said nothing. */
    public boolean agrees() {
      return judged.filter(j -> j.verdict() == called()).isPresent();
    }
  }

  /**
   * What share of the expected area, taken as the limit of lagging, agrees best with the calls:
   * lagging or stalled against on-track, ahead and pale, over the sites.
   *
   * @param laggingShare the limit that agrees best over all cases
   * @param agreement share of cases that it agrees on; optimistic, for it was chosen on them
   * @param crossValidated share of cases agreed on when each group of calls is judged by the limit
   *     that is best for the other groups
   * @param asSet share of cases that the book's own limits agree on
   * @param cases number of cases
   * @param groups number of groups: evenings; rafts where all calls are of one evening; sites where
   *     they are of one raft besides
   */
  public record Threshold(
      double laggingShare,
      double agreement,
      double crossValidated,
      double asSet,
      int cases,
      int groups) {}

  /**
   * Counts the cases with a call and a verdict.
   *
   * @param called the grower's word
   * @param said the program's
   * @return number of cases
   */
  public int count(Verdict called, Verdict said) {
    return (int)
        cases.stream()
            .filter(c -> c.called() == called)
            .filter(c -> c.judged().filter(j -> j.verdict() == said).isPresent())
            .count();
  }

  /**
   * Counts the cases with a verdict.
   *
   * @return {@code counts[called][said]}, both in the order of {@link Verdict#values}
   */
  public int[][] counts() {
    List<Verdict> words = List.of(Verdict.values());
    int[][] counts = new int[words.size()][words.size()];
    for (int called = 0; called < words.size(); called++) {
      for (int said = 0; said < words.size(); said++) {
        counts[called][said] = count(words.get(called), words.get(said));
      }
    }
    return counts;
  }
}
