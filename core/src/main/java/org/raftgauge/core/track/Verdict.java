// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Locale;

/** What is said of a site, raft, pond or station; of several findings the first here is said. */
public enum Verdict {
  /** Photo, pose, identity, light or station is in doubt: nothing is said of the plants. */
  HELD,
  /** Canopy has collapsed or turned to dead tissue. */
  DEAD,
  /** Planted, but nothing grows there. */
  EMPTY,
  /**
   * Has all but stopped growing; of a pond, all its plants together, by their own growth before.
   */
  STALLED,
  /**
   * Credibly smaller than the crop's limit allows; of a pond also: all its plants together grow
   * credibly less than their own growth before lets expect.
   */
  LAGGING,
  /** Leaf colour is credibly paler than the cohort's and than the absolute limit. */
  PALE,
  /** Credibly larger than the crop's limit: bolting, or two plants in one hole. */
  AHEAD,
  /** Nothing of the kind. */
  ON_TRACK,
  /** Cannot be told yet: nothing to hold it against, or an interval that spans all limits. */
  NOT_TOLD;

  /** Says whether it asks for nothing of a person: nothing is found to be amiss. */
  public boolean isCalm() {
    return this == ON_TRACK || this == NOT_TOLD;
  }

  /** Returns the word as written in reports, such as {@code on-track}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
