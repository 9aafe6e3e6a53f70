// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.batch.station.StationEvenings;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.evening.StationDoubt;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.station.CheckStation;
import org.raftgauge.core.station.StationEvening;

/**
 * What the stations' control charts say, evening by evening, and which photos are held for it.
 *
 * <p>Worked out anew from all photos of the history on every run: each evening against the evenings
 * before it alone, so that neither the order in which folders are measured nor a second run over
 * one changes what is said.
 */
final class StationDoubts {
  private final Farm farm;
  private final Map<String, Map<LocalDate, StationDoubt>> doubts = new TreeMap<>();

  private StationDoubts(Farm farm) {
    this.farm = farm;
  }

  /**
   * Charts every station of the book.
   *
   * @param measures everything measured, as corrected
   * @param farm the book
   * @return what the charts say
   * @throws IOException if the history cannot be read
   */
  static StationDoubts of(Measures measures, Farm farm) throws IOException {
    StationDoubts doubts = new StationDoubts(farm);
    for (Station station : farm.book().stations().values()) {
      List<StationEvening> evenings =
          StationEvenings.of(measures.stationPast(station.name()), farm.farmDay(), LocalDate.MIN);
      doubts.chart(station, evenings);
    }
    return doubts;
  }

  /** Takes what was charted elsewhere. */
  static StationDoubts of(List<StationDoubt> charted, Farm farm) {
    StationDoubts doubts = new StationDoubts(farm);
    for (StationDoubt each : charted) {
      doubts.doubts.computeIfAbsent(each.station(), s -> new TreeMap<>()).put(each.evening(), each);
    }
    return doubts;
  }

  /** Returns all doubts, by station and evening. */
  List<StationDoubt> all() {
    return doubts.values().stream().flatMap(d -> d.values().stream()).toList();
  }

  /** Charts the times between changes made on purpose each by itself. */
  private void chart(Station station, List<StationEvening> evenings) {
    Map<LocalDate, StationDoubt> found = new TreeMap<>();
    List<LocalDate> starts = new ArrayList<>(List.of(LocalDate.MIN));
    starts.addAll(station.changedOn());
    starts.add(LocalDate.MAX);
    for (int i = 0; i + 1 < starts.size(); i++) {
      LocalDate from = starts.get(i);
      LocalDate to = starts.get(i + 1);
      List<StationEvening> part =
          evenings.stream()
              .filter(e -> !e.evening().isBefore(from) && e.evening().isBefore(to))
              .toList();
      CheckStation.byEvening(part)
          .forEach(
              (evening, faults) -> {
                if (!faults.isEmpty()) {
                  found.put(evening, new StationDoubt(station.name(), evening, faults));
                }
              });
    }
    doubts.put(station.name(), found);
  }

  /**
   * Returns the doubts about evenings.
   *
   * @param evenings which
   * @return one an evening and station that is not as it was
   */
  List<StationDoubt> on(Collection<LocalDate> evenings) {
    return doubts.values().stream()
        .flatMap(d -> d.values().stream())
        .filter(d -> evenings.contains(d.evening()))
        .toList();
  }

  /** Says whether a photo is held for its station's sake. */
  boolean holds(PhotoMeasure photo) {
    return doubt(photo).filter(StationDoubt::holds).isPresent();
  }

  /** Returns a photo with its rafts held where its station is too far from what it was. */
  PhotoMeasure settled(PhotoMeasure photo) {
    Optional<StationDoubt> doubt = doubt(photo).filter(StationDoubt::holds);
    if (doubt.isEmpty()) {
      return photo;
    }
    String why = doubt.get().heldReason();
    List<RaftMeasure> rafts =
        photo.rafts().stream().map(r -> r.held().isEmpty() ? r.withHeld(why) : r).toList();
    return Rows.with(
        photo.withRafts(rafts),
        new Say(
            PhotoStatus.HELD,
            Rows.joined(photo.reason(), why),
            Rows.joined(photo.remedy(), doubt.get().remedy())));
  }

  private Optional<StationDoubt> doubt(PhotoMeasure photo) {
    boolean measured = photo.status() == PhotoStatus.USED && photo.takenAt().isPresent();
    return measured
        ? Optional.ofNullable(
            doubts.getOrDefault(photo.station(), Map.of()).get(farm.evening(photo.takenAt().get())))
        : Optional.empty();
  }
}
