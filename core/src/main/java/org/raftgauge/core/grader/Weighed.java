// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.OffsetDateTime;
import org.raftgauge.core.book.SiteId;

/**
 * A plant that was weighed, with what the photo nearest in time says of it.
 *
 * @param line of {@code weighings.csv}
 * @param raft the raft it stood on
 * @param site its site
 * @param weighedAt when it was weighed
 * @param freshWeightG fresh weight, g, above 0
 * @param traits what it was measured to be
 * @param regime whether its outline was its own
 * @param photo the photo
 */
public record Weighed(
    int line,
    String raft,
    SiteId site,
    OffsetDateTime weighedAt,
    double freshWeightG,
    Traits traits,
    Regime regime,
    String photo) {

  /** Checks the weight. */
  public Weighed {
    if (!(freshWeightG > 0) || !Double.isFinite(freshWeightG)) {
      throw new IllegalArgumentException("freshWeightG must be > 0, got " + freshWeightG);
    }
  }

  /** Returns the same weighing with other traits. */
  Weighed with(Traits others) {
    return new Weighed(line, raft, site, weighedAt, freshWeightG, others, regime, photo);
  }

  /** Names the row for people, such as {@code line 12 (KV-112 B3)}. */
  public String label() {
    return "line " + line + " (" + raft + " " + site + ")";
  }
}
