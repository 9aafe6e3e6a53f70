// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Locale;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;

/** Says in words how large a plant is for its age, and how it grew where that was seen. */
final class GrowthWords {
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
      return String.format(
          Locale.ROOT,
          "its neighbours close over it, so this photo shows only a part of it; all its photos"
              + " together tell %.0f %% of the leaf area expected at its age (95 %% interval %.0f to"
              + " %.0f %%)",
          100 * share.shareOfExpected(),
          100 * share.lo95(),
          100 * share.hi95());
    }
    return String.format(
        Locale.ROOT,
        "has %.0f %% of the leaf area expected at its age (95 %% interval %.0f to %.0f %%)",
        100 * share.shareOfExpected(),
        100 * share.lo95(),
        100 * share.hi95());
  }

  /** Says its growth rate if two open sights told one; a smaller plant grows faster when sound. */
  private static String growth(Follow plant, Verdict verdict) {
    if (closed(plant) || !plant.foretold() || openSights(plant.series()) < 2) {
      return "";
    }
    double expected = plant.expected().orElseThrow().rate();
    String own =
        String.format(
            Locale.ROOT,
            "; grows %.1f %% a day",
            100 * Math.expm1(expected + plant.track().rate()));
    return verdict == Verdict.STALLED
        ? own
            + String.format(
                Locale.ROOT, ", where sound ones grow %.1f %%", 100 * Math.expm1(expected))
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

  private static long openSights(PlantSeries series) {
    return series.sights().stream()
        .filter(Sight::hasArea)
        .filter(sight -> !sight.measure().closed())
        .count();
  }
}
