// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.Crop;

/** Says in words how the plants of a raft or a pond stand as a whole. */
final class GroupWords {
  private static final String UNTOLD = "cannot be told yet as a whole: ";
  private static final String BY_OTHERS = ", by the other ponds, past cycles or curve";

  private GroupWords() {}

  /** An interval that spans more, upper over lower end, says nothing that a number could. */
  private static final double WIDEST = 4;

  static String raft(Optional<GroupTrack> track, Optional<Expected> expected, Crop.Limits limits) {
    if (track.isEmpty()) {
      return "cannot be told yet as a whole: no other raft of its cohort was seen at about this age,"
          + " and there are no past cycles and no curve in the book; its plants are compared with each other alone; "
          + GrowthWords.WHAT_WOULD_TELL;
    }
    return level("raft", track.get(), limits) + expected.map(GroupWords::basis).orElse("");
  }

  static String pond(Optional<GroupTrack> track, Crop.Limits limits) {
    return track
        .map(t -> level("pond", t, limits))
        .map(words -> words.startsWith(UNTOLD) ? words : words + BY_OTHERS)
        .orElse(
            "cannot be told yet as a whole: no other pond with the same cohort, no past cycles and"
                + " no curve in the book to compare with");
  }

  private static String level(String what, GroupTrack track, Crop.Limits limits) {
    double lo = 100 * track.lo95();
    double hi = 100 * track.hi95();
    if (hi > WIDEST * lo) {
      return "cannot be told yet as a whole: by what is known its plants may have far less or far"
          + " more than the leaf area expected of their age; another photo or past cycles of its"
          + " crop would tell";
    }
    if (!Told.isNarrow(track.lo95(), track.hi95(), limits)) {
      return String.format(
          Locale.ROOT,
          "cannot be told yet as a whole: its plants have anything from %.0f to %.0f %% of the leaf"
              + " area expected of their age (95 %% interval); another photo or past cycles of its"
              + " crop would tell",
          lo,
          hi);
    }
    return String.format(
        Locale.ROOT,
        "the %s's plants have %.0f %% of the leaf area expected of their age (95 %% interval %.0f"
            + " to %.0f %%)",
        what,
        100 * track.share(),
        lo,
        hi);
  }

  /** Says what the expected rests on. */
  private static String basis(Expected expected) {
    if (expected.shift().isEmpty()) {
      return "; expected is what the other rafts of its cohort had when last seen, grown on to its"
          + " age";
    }
    return String.format(
        Locale.ROOT,
        "; expected is %s, shifted by %+.0f %%",
        expected.basis().words(),
        100 * Math.expm1(expected.shift().getAsDouble()));
  }
}
