// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.track.Judged;

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
    return new ReportModel(
        all.tonight().map(Texts::longDay).orElse(""),
        glance(rafts),
        all.input().worklist(),
        new GatherPonds(all, rafts).ponds(),
        rafts,
        all.input().forecast(),
        problems(),
        new GatherOrigin(all).origin());
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

  private List<String> glance(List<RaftSheet> rafts) {
    List<String> glance = new ArrayList<>();
    int tonight = (int) rafts.stream().filter(r -> r.head().tonight()).count();
    int missing = all.input().run().summary().notPhotographed().size();
    if (all.tonight().isPresent()) {
      String also =
          tonight == rafts.size() ? "" : ", " + (rafts.size() - tonight) + " on evenings before";
      glance.add(Texts.count(tonight, "raft") + " photographed this evening" + also + ".");
      glance.add(
          missing == 0
              ? "Every expected raft was photographed."
              : Texts.count(missing, "raft") + " expected and not photographed.");
    }
    int sites = rafts.stream().mapToInt(r -> r.head().toLookAt()).sum();
    int boards = (int) rafts.stream().filter(r -> r.head().toLookAt() > 0).count();
    if (sites > 0) {
      glance.add(
          Texts.count(sites, "site") + " to look at, on " + Texts.count(boards, "raft") + ".");
    }
    pondsInTrouble().ifPresent(glance::add);
    return glance;
  }

  private Optional<String> pondsInTrouble() {
    if (all.tonight().isEmpty()) {
      return Optional.empty();
    }
    List<String> ponds =
        all.input().verdicts().getOrDefault(all.tonight().get(), List.of()).stream()
            .filter(j -> j.scope() == Judged.Scope.POND && Mark.of(j.verdict()).weight() > 1)
            .map(j -> j.place().pond() + " (" + Mark.of(j.verdict()).word() + ")")
            .toList();
    return ponds.isEmpty()
        ? Optional.empty()
        : Optional.of("Ponds that stand out: " + String.join(", ", ponds) + ".");
  }

  private List<ReportModel.PhotoNote> problems() {
    Set<String> doubted = new HashSet<>();
    all.input().run().rafts().stream()
        .filter(r -> !r.doubt().isEmpty())
        .forEach(r -> doubted.add(r.photo().photo()));
    List<ReportModel.PhotoNote> notes = new ArrayList<>(stations());
    for (PhotoMeasure photo : all.input().run().photos()) {
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
    return notes;
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
