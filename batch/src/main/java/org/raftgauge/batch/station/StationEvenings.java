// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.raftgauge.batch.store.StationPast;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.plane.EdgeBlur;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationSign;

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
    byEvening.forEach((evening, some) -> evenings.add(evening(evening, some)));
    return evenings;
  }

  private static StationEvening evening(LocalDate evening, List<StationPast.Photo> photos) {
    Map<StationSign, Double> values = new EnumMap<>(StationSign.class);
    for (StationSign sign : StationSign.values()) {
      Stream<Double> seen =
          photos.stream().filter(p -> p.values().containsKey(sign)).map(p -> p.values().get(sign));
      median(seen).ifPresent(value -> values.put(sign, value));
    }
    int parts = EdgeBlur.CELLS * EdgeBlur.CELLS;
    List<OptionalDouble> cells = new ArrayList<>();
    // An earlier program told other parts, which cannot be compared.
    List<List<OptionalDouble>> seen =
        photos.stream().map(StationPast.Photo::blurCells).filter(c -> c.size() == parts).toList();
    for (int cell = 0; cell < parts && !seen.isEmpty(); cell++) {
      int at = cell;
      cells.add(median(seen.stream().map(c -> c.get(at)).flatMap(c -> c.stream().boxed())));
    }
    return new StationEvening(evening, values, cells);
  }

  private static OptionalDouble median(Stream<Double> some) {
    double[] values = some.mapToDouble(Double::doubleValue).sorted().toArray();
    int n = values.length;
    return n == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of((values[(n - 1) / 2] + values[n / 2]) / 2);
  }
}
