// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.evening.HiddenRow;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.report.RaftRows;

/** Gathers the page from what a run has to show. */
final class GatherReport {
  private final Gathered all;

  private GatherReport(Gathered all) {
    this.all = all;
  }

  /**
   * Gathers.
   *
   * @param all what to gather from
   * @return the page
   */
  static ReportModel gather(Gathered all) {
    return new GatherReport(all).model();
  }

  private ReportModel model() {
    List<RaftSheet> rafts = looks(all).values().stream().map(this::sheet).toList();
    List<ReportModel.Pond> ponds = new GatherPonds(all, rafts).ponds();
    return new ReportModel(
        all.tonight().map(Texts::longDay).orElse(""),
        all.texts().areaUnit(),
        new Glance(all, rafts, ponds).lines(),
        all.input().worklist(),
        hidden(),
        ponds,
        rafts,
        all.input().forecast(),
        problems(),
        new GatherOrigin(all).origin());
  }

  private String hidden() {
    return all.input().run().summary().judged().stream()
        .map(evening -> HiddenRow.words(evening.hidden(), Texts::day))
        .filter(words -> !words.isEmpty())
        .map(words -> words + ".")
        .collect(Collectors.joining());
  }

  private RaftSheet sheet(List<RaftLook> looks) {
    return new GatherRaft(all, looks).sheet();
  }

  /** Returns the evenings of each raft that was seen and named, oldest first, by raft. */
  static Map<String, List<RaftLook>> looks(Gathered all) {
    FarmDay days = all.book().farmDay();
    Map<String, List<RaftLook>> looks = new TreeMap<>();
    for (RaftRows rows : all.input().run().rafts().stream().sorted(RaftRows.ORDER).toList()) {
      Optional<LocalDate> evening = rows.photo().takenAt().map(at -> days.evening(at.toInstant()));
      if (evening.isPresent() && rows.raft().raft().isPresent()) {
        looks
            .computeIfAbsent(rows.raft().raft().get(), r -> new ArrayList<>())
            .add(new RaftLook(evening.get(), rows));
      }
    }
    looks.values().forEach(list -> list.sort(Comparator.comparing(RaftLook::evening)));
    return looks;
  }

  private List<ReportModel.PhotoNote> problems() {
    Set<String> doubted = new HashSet<>();
    all.input().run().rafts().stream()
        .filter(r -> !r.doubt().isEmpty())
        .forEach(r -> doubted.add(r.photo().photo()));
    List<ReportModel.PhotoNote> notes = new ArrayList<>(stations());
    for (PhotoMeasure photo : latestFirst()) {
      if (hasSay(photo) || doubted.contains(photo.photo())) {
        String clock = photo.clockDoubt().isEmpty() ? "" : "clock: " + photo.clockDoubt();
        String both = photo.reason().isEmpty() || clock.isEmpty() ? "" : "; ";
        notes.add(
            new ReportModel.PhotoNote(
                photo.photo(),
                photo.status().name().toLowerCase(Locale.ROOT),
                photo.reason() + both + clock,
                photo.remedy(),
                all.files().overlay(photo.photo())));
      }
    }
    notes.addAll(new RaftNotes(all).notes());
    return notes;
  }

  private List<PhotoMeasure> latestFirst() {
    Comparator<PhotoMeasure> byTime =
        Comparator.comparing(
            photo -> photo.takenAt().map(OffsetDateTime::toInstant).orElse(Instant.MAX));
    return all.input().run().photos().stream()
        .sorted(byTime.reversed().thenComparing(PhotoMeasure::photo))
        .toList();
  }

  /** Stations that are not as they were stand before the photos. */
  private List<ReportModel.PhotoNote> stations() {
    return all.input().run().summary().judged().stream()
        .flatMap(evening -> evening.stations().stream())
        .map(
            s ->
                new ReportModel.PhotoNote(
                    "station " + s.station(),
                    s.holds() ? "photos held" : "check",
                    s.finding(),
                    s.remedy(),
                    ""))
        .toList();
  }

  private static boolean hasSay(PhotoMeasure photo) {
    boolean failed = photo.status() == PhotoStatus.HELD || photo.status() == PhotoStatus.REFUSED;
    return failed || !photo.clockDoubt().isEmpty() || !photo.remedy().isEmpty();
  }
}
