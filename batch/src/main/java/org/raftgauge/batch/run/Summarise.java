// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.report.RaftRows;

/** Counts what a run came to. */
final class Summarise {

  private Summarise() {}

  /**
   * Summarises a run.
   *
   * @param folder where it will be published
   * @param run its photos and rafts
   * @param farm the book
   * @param notes what else a person should know
   * @return the summary
   */
  static RunSummary run(Path folder, Collected run, Farm farm, List<String> notes) {
    List<PhotoMeasure> all = run.photos();
    List<RaftRows> rafts = run.rafts();
    NavigableSet<LocalDate> evenings = evenings(all, farm);
    Optional<LocalDate> last = evenings.isEmpty() ? Optional.empty() : Optional.of(evenings.last());
    return new RunSummary(
        folder,
        counts(all),
        rafts.size(),
        rafts.stream().mapToInt(r -> r.sites().size()).sum(),
        rafts.stream().map(RaftRows::totalAreaCm2).flatMapToDouble(OptionalDouble::stream).sum(),
        last,
        last.map(evening -> missing(all, evening, farm)).orElse(new TreeSet<>()),
        attention(run),
        notes);
  }

  /** Returns the evenings of the photos that were measured. */
  static NavigableSet<LocalDate> evenings(List<PhotoMeasure> photos, Farm farm) {
    NavigableSet<LocalDate> evenings = new TreeSet<>();
    for (PhotoMeasure photo : photos) {
      if (!photo.rafts().isEmpty()) {
        photo.takenAt().map(farm::evening).ifPresent(evenings::add);
      }
    }
    return evenings;
  }

  private static Map<PhotoStatus, Integer> counts(List<PhotoMeasure> photos) {
    Map<PhotoStatus, Integer> counts = new EnumMap<>(PhotoStatus.class);
    for (PhotoStatus status : PhotoStatus.values()) {
      counts.put(status, (int) photos.stream().filter(p -> p.status() == status).count());
    }
    return counts;
  }

  private static NavigableSet<String> missing(
      List<PhotoMeasure> photos, LocalDate evening, Farm farm) {
    NavigableSet<String> missing = new TreeSet<>(farm.expectedRafts(evening));
    for (PhotoMeasure photo : photos) {
      if (photo.takenAt().map(farm::evening).filter(evening::equals).isPresent()) {
        photo.rafts().forEach(r -> r.raft().ifPresent(missing::remove));
      }
    }
    return missing;
  }

  private static List<String> attention(Collected run) {
    List<String> lines = new ArrayList<>();
    for (PhotoMeasure photo : run.photos()) {
      if (photo.status() == PhotoStatus.HELD || photo.status() == PhotoStatus.REFUSED) {
        String remedy = photo.remedy().isEmpty() ? "" : "; " + photo.remedy();
        lines.add(photo.photo() + ": " + photo.reason() + remedy);
      }
    }
    run.rafts().forEach(raft -> lines.addAll(HeldSites.lines(raft)));
    return lines;
  }
}
