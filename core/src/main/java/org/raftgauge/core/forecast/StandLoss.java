// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.raftgauge.core.book.PlantLife;

/**
 * How many plants a crop loses a day, from all that stood so far: died by the events, or found bare
 * or brown where they still stand.
 *
 * <p>The rate is {@code (lost + 1/2) / (plant days + 1/2 / usual)}: a usual rate that counts for
 * half a loss, so that a young history does not promise that nothing is ever lost.
 */
final class StandLoss {
  /** Share lost a day before the history tells: 1.5 % of a 30-day cycle; a working value. */
  private static final double USUAL_PER_DAY = 0.0005;

  private static final double SECONDS_A_DAY = 86_400;

  private final Map<String, Double> perDay = new HashMap<>();

  private record Count(double lost, double plantDays) {
    Count plus(Count other) {
      return new Count(lost + other.lost, plantDays + other.plantDays);
    }
  }

  private StandLoss() {}

  /**
   * Counts.
   *
   * @param plants every plant, as known by the end of the evening
   * @param bare plants that stand bare or brown
   * @param end of the evening
   */
  static StandLoss of(List<PlantLife> plants, Set<String> bare, Instant end) {
    Map<String, Count> counts = new HashMap<>();
    for (PlantLife life : plants) {
      boolean out = bare.contains(life.plant());
      for (PlantLife.Stay stay : life.stays()) {
        boolean died = stay.ending() == PlantLife.Ending.DIED;
        Instant to = stay.to().filter(t -> t.isBefore(end)).orElse(end);
        double days = Math.max(0, Duration.between(stay.from(), to).toSeconds() / SECONDS_A_DAY);
        boolean lost = died || (out && stay.holdsAt(end));
        counts.merge(stay.planting().crop(), new Count(lost ? 1 : 0, days), Count::plus);
      }
    }
    StandLoss loss = new StandLoss();
    counts.forEach(
        (crop, c) ->
            loss.perDay.put(crop, (c.lost() + 0.5) / (c.plantDays() + 0.5 / USUAL_PER_DAY)));
    return loss;
  }

  /** Returns the share of a crop's plants that stand so many days from now, 0..1. */
  double standing(String crop, int days) {
    return Math.exp(-perDay.getOrDefault(crop, USUAL_PER_DAY) * days);
  }
}
