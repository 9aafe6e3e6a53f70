// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;
import org.raftgauge.core.table.Decimals;

/** Says in words how large a plant is for its age, and how it grew where that was seen. */
final class GrowthWords {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

  private GrowthWords() {}

  static String of(Follow plant, Judged.Share share, Verdict verdict) {
    String words =
        size(plant, share) + ", judging by " + share.basis().words() + growth(plant, verdict);
    if (verdict != Verdict.NOT_TOLD) {
      return words;
    }
    return "cannot be told yet whether it is on track: " + words + "; " + remedy(plant, share);
  }

  private static String size(Follow plant, Judged.Share share) {
    if (closed(plant)) {
      return "its neighbours close over it, so this photo shows only a part of it; all its photos"
          + " together tell "
          + expected(share)
          + ")";
    }
    double alone = share.areaCm2() / share.expectedAreaCm2();
    String photo =
        alone < share.lo95() || alone > share.hi95()
            ? "; this photo alone: " + percent(alone, 0)
            : "";
    return "has " + expected(share) + photo + ")";
  }

  /** Says how much of what is expected it has; the interval's bracket stays open. */
  private static String expected(Judged.Share share) {
    return percent(share.shareOfExpected(), 0)
        + " of the leaf area expected at its age (95 % interval "
        + Decimals.words(100 * share.lo95(), 0)
        + " to "
        + percent(share.hi95(), 0);
  }

  private static String percent(double share, int decimals) {
    return Decimals.words(100 * share, decimals) + " %";
  }

  /** Says how it grew between its last two open sights, as they show it. */
  private static String growth(Follow plant, Verdict verdict) {
    List<Sight> open = lastOpen(plant.series());
    if (closed(plant) || !plant.foretold() || open.size() < 2) {
      return "";
    }
    double expected = plant.expected().orElseThrow().rate();
    Sight last = open.get(0);
    Sight before = open.get(1);
    double days = last.ageDays() - before.ageDays();
    double rate = Math.log(last.areaCm2() / before.areaCm2()) / days;
    String own =
        (rate < 0 ? "; shrank by " : "; grew by ")
            + percent(Math.abs(Math.expm1(rate)), 1)
            + " a day since "
            + DAY.format(before.evening());
    return verdict == Verdict.STALLED
        ? own + ", where sound ones grow " + percent(Math.expm1(expected), 1)
        : own;
  }

  private static String remedy(Follow plant, Judged.Share share) {
    if (share.basis() == Basis.RAFT) {
      return "nothing outside the raft is there to compare with";
    }
    return closed(plant)
        ? "photos from above no longer tell"
        : "the next evening's photo will tell more";
  }

  /** What is wanting where there is nothing outside a raft to compare with. */
  static final String WHAT_WOULD_TELL =
      "another raft of its cohort or three past cycles of its crop would tell";

  private static boolean closed(Follow plant) {
    return plant.series().last().measure().closed();
  }

  /** Returns the last two open sights, the last first; fewer where there are no more. */
  private static List<Sight> lastOpen(PlantSeries series) {
    List<Sight> open = new ArrayList<>();
    for (int i = series.sights().size() - 1; i >= 0 && open.size() < 2; i--) {
      Sight sight = series.sights().get(i);
      if (sight.hasArea() && !sight.measure().closed()) {
        open.add(sight);
      }
    }
    return open;
  }
}
