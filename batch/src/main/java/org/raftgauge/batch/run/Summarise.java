// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BinaryOperator;
import java.util.stream.Collectors;
import org.raftgauge.batch.store.Settled;
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
    Collection<RaftRows> rafts = latest(run.assigned());
    return new RunSummary(
        folder,
        counts(run.photos()),
        rafts.size(),
        rafts.stream().mapToInt(r -> r.sites().size()).sum(),
        rafts.stream().map(RaftRows::totalAreaCm2).flatMapToDouble(OptionalDouble::stream).sum(),
        run.unassigned(),
        missing(run.photos(), farm),
        attention(run),
        notes,
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  /**
   * Returns each raft once, as on its latest photo that tells leaf: leaf of earlier evenings is no
   * more leaf, and a held photo takes nothing away from a sound one.
   */
  static Collection<RaftRows> latest(List<RaftRows> rows) {
    Map<String, RaftRows> latest = new TreeMap<>();
    Comparator<RaftRows> byTime =
        Comparator.<RaftRows, Boolean>comparing(r -> r.totalAreaCm2().isPresent())
            .thenComparing(r -> r.photo().takenAt().orElse(OffsetDateTime.MIN).toInstant());
    for (RaftRows row : rows) {
      latest.merge(row.raft().raft().orElse(""), row, BinaryOperator.maxBy(byTime));
    }
    return latest.values();
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

  private static NavigableMap<LocalDate, NavigableSet<String>> missing(
      List<PhotoMeasure> photos, Farm farm) {
    NavigableMap<LocalDate, NavigableSet<String>> missing = new TreeMap<>();
    for (LocalDate evening : evenings(photos, farm)) {
      missing.put(evening, new TreeSet<>(farm.expectedRafts(evening)));
    }
    for (PhotoMeasure photo : photos) {
      // A skipped photo with rafts is one that was excluded: it counts as not taken.
      if (photo.status() != PhotoStatus.SKIPPED) {
        photo
            .takenAt()
            .map(farm::evening)
            .map(missing::get)
            .ifPresent(m -> photo.rafts().forEach(r -> r.raft().ifPresent(m::remove)));
      }
    }
    return missing;
  }

  private static List<String> attention(Collected run) {
    Set<String> strange =
        run.unassigned().stream().map(Unassigned::photo).collect(Collectors.toSet());
    List<String> lines = new ArrayList<>();
    for (Settled settled : run.settled()) {
      PhotoMeasure photo = settled.photo();
      if (doubted(settled) || strange.contains(photo.photo())) {
        String remedy = photo.remedy().isEmpty() ? "" : "; " + photo.remedy();
        lines.add(photo.photo() + ": " + photo.reason() + remedy);
      }
    }
    run.rafts().forEach(raft -> lines.addAll(HeldSites.lines(raft)));
    return lines;
  }

  /** Says whether a photo or one of its rafts is held or refused. */
  private static boolean doubted(Settled settled) {
    return switch (settled.photo().status()) {
      case HELD, REFUSED -> true;
      case REPLACED, SKIPPED -> false;
      case USED, KNOWN ->
          settled.photo().rafts().stream().anyMatch(r -> !r.held().isEmpty())
              || settled.rafts().stream().anyMatch(r -> r.kind() == Settled.Kind.HELD);
    };
  }
}
