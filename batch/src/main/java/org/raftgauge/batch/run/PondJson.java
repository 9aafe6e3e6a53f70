// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/**
 * Words what an evening came to in one pond for other programs, as {@code pond.schema.json} says.
 */
final class PondJson {
  private static final String CAUTION =
      "Observations from photos, and tasks for a person to confirm. Nothing here is a set-point;"
          + " nothing here may switch equipment.";

  private final EveningResult result;
  private final CropBook book;
  private final String pond;

  /**
   * Words a pond.
   *
   * @param result what the evening came to
   * @param book the crop book
   * @param pond the pond; empty for what belongs to no pond
   */
  PondJson(EveningResult result, CropBook book, String pond) {
    this.result = result;
    this.book = book;
    this.pond = pond;
  }

  Map<String, Object> document() {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("$schema", PondFiles.SCHEMA);
    all.put("program", "raftgauge");
    all.put("program_version", ProgramVersion.current().version());
    all.put("caution", CAUTION);
    all.put("evening", result.evening());
    all.put("pond", pond);
    rows(Judged.Scope.POND).stream().findFirst().ifPresent(row -> all.put("whole_pond", said(row)));
    all.put("rafts", pond.isEmpty() ? List.of() : rafts());
    all.put(
        "tasks",
        result.worklist().stream()
            .filter(task -> task.where().pond().equals(pond))
            .map(PondJson::task)
            .toList());
    return all;
  }

  private List<Judged> rows(Judged.Scope scope) {
    return result.verdicts().stream()
        .filter(row -> row.scope() == scope && row.place().pond().equals(pond))
        .toList();
  }

  private List<Map<String, Object>> rafts() {
    Map<String, List<Judged>> sites = new TreeMap<>();
    for (Judged row : rows(Judged.Scope.SITE)) {
      sites.computeIfAbsent(row.place().raft(), r -> new ArrayList<>()).add(row);
    }
    List<Map<String, Object>> rafts = new ArrayList<>();
    for (Judged row : rows(Judged.Scope.RAFT)) {
      rafts.add(raft(row, sites.getOrDefault(row.place().raft(), List.of())));
    }
    return rafts;
  }

  private Map<String, Object> raft(Judged row, List<Judged> sites) {
    Map<String, Object> raft = new LinkedHashMap<>();
    String name = row.place().raft();
    LocalDate evening = result.evening();
    raft.put("raft", name);
    Optional<Planting> planting = book.plantingsOn(name, evening).stream().findFirst();
    raft.put("berth", planting.map(Planting::berth).orElse(""));
    raft.put("crop", row.place().crop());
    raft.put("variety", planting.map(Planting::variety).orElse(""));
    raft.put("lot", planting.map(Planting::lot).orElse(""));
    raft.put("station", row.place().station());
    row.place().takenAt().ifPresent(at -> raft.put("taken_at", at));
    number(raft, "dat", row.place().ageDays(), 3);
    raft.putAll(said(row));
    raft.put("sites_by_verdict", counts(sites));
    raft.put(
        "sites_not_on_track",
        sites.stream().filter(s -> !s.verdict().isCalm()).map(PondJson::site).toList());
    return raft;
  }

  private static Map<String, Object> counts(List<Judged> sites) {
    Map<String, Object> counts = new LinkedHashMap<>();
    for (Verdict verdict : Verdict.values()) {
      long n = sites.stream().filter(s -> s.verdict() == verdict).count();
      if (n > 0) {
        counts.put(verdict.word(), n);
      }
    }
    return counts;
  }

  private static Map<String, Object> site(Judged row) {
    Map<String, Object> site = new LinkedHashMap<>();
    site.put("site", row.place().site().orElseThrow());
    site.put("plant", row.place().plant());
    site.putAll(said(row));
    return site;
  }

  /** Words what is said of a pond, raft or site. */
  private static Map<String, Object> said(Judged row) {
    Map<String, Object> said = new LinkedHashMap<>();
    said.put("verdict", row.verdict().word());
    said.put("also", row.also().stream().map(Verdict::word).toList());
    row.share()
        .ifPresent(
            share -> {
              number(said, "area_cm2", OptionalDouble.of(share.areaCm2()), 2);
              number(said, "expected_area_cm2", OptionalDouble.of(share.expectedAreaCm2()), 2);
              number(said, "share_of_expected", OptionalDouble.of(share.shareOfExpected()), 3);
              number(said, "share_lo95", OptionalDouble.of(share.lo95()), 3);
              number(said, "share_hi95", OptionalDouble.of(share.hi95()), 3);
              number(said, "days_behind", share.daysBehind(), 2);
              said.put("reference", share.basis().word());
            });
    said.put("pattern", row.pattern().word());
    said.put("evidence", row.evidence());
    return said;
  }

  private static void number(
      Map<String, Object> into, String key, OptionalDouble value, int decimals) {
    if (value.isPresent()) {
      into.put(
          key, BigDecimal.valueOf(value.getAsDouble()).setScale(decimals, RoundingMode.HALF_EVEN));
    }
  }

  private static Map<String, Object> task(Task task) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("item", task.item());
    one.put("action", task.action().words());
    one.put("priority", task.priority());
    one.put("station", task.where().station());
    one.put("berth", task.where().berth());
    one.put("raft", task.where().raft());
    one.put("sites", task.where().sites().stream().map(SiteId::toString).toList());
    one.put("why", task.why());
    task.by().ifPresent(day -> one.put("by", day));
    one.put("to_be_confirmed_by_a_person", true);
    return one;
  }
}
