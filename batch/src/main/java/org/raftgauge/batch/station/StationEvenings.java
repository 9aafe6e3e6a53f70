// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import org.raftgauge.batch.store.StationPast;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.station.StationEvening;

/** Sums up a station's photos evening by evening, by their medians. */
public final class StationEvenings {

  private StationEvenings() {}

  /**
   * Sums up.
   *
   * @param photos facts of photos, in any order
   * @param farmDay says which evening a time belongs to
   * @param from evenings before that one are left out
   * @return an evening each, in the order of time
   */
  public static List<StationEvening> of(
      List<StationPast.Photo> photos, FarmDay farmDay, LocalDate from) {
    TreeMap<LocalDate, List<StationPast.Photo>> byEvening = new TreeMap<>();
    for (StationPast.Photo photo : photos) {
      LocalDate evening = farmDay.evening(photo.takenAt().toInstant());
      if (!evening.isBefore(from)) {
        byEvening.computeIfAbsent(evening, e -> new ArrayList<>()).add(photo);
      }
    }
    List<StationEvening> evenings = new ArrayList<>();
    byEvening.forEach(
        (evening, some) ->
            evenings.add(
                new StationEvening(
                    evening,
                    median(some, StationPast.Photo::sharpness),
                    median(some, StationPast.Photo::exposureClippedFraction),
                    median(some, StationPast.Photo::lightCast),
                    median(some, StationPast.Photo::cameraHeightMm),
                    median(some, StationPast.Photo::poseErrorMm))));
    return evenings;
  }

  private static OptionalDouble median(
      List<StationPast.Photo> photos, Function<StationPast.Photo, OptionalDouble> fact) {
    double[] values = photos.stream().map(fact).flatMapToDouble(OptionalDouble::stream).toArray();
    Arrays.sort(values);
    int n = values.length;
    return n == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of((values[(n - 1) / 2] + values[n / 2]) / 2);
  }
}
