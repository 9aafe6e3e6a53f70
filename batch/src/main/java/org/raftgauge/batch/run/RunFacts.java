// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.evening.StationDoubt;

/** Collects what {@code run.json} says of a run. */
final class RunFacts {

  private RunFacts() {}

  static Map<String, Object> of(
      RunRequest request, Tools tools, RunSummary summary, FirstPass pass) {
    ProgramVersion version = ProgramVersion.current();
    Map<String, Object> facts = new LinkedHashMap<>();
    facts.put("run", request.id());
    facts.put("version", version.version());
    facts.put("measuring_code_sha256", version.measuringCode());
    facts.put("started_at", request.startedAt());
    facts.put("settings", settings(request, tools));
    facts.put("timing", timing(pass));
    facts.put("system", system());
    facts.put("photos", photos(summary));
    facts.put("rafts", summary.rafts());
    facts.put("sites", summary.sites());
    facts.put("total_area_cm2", Math.round(summary.totalAreaCm2() * 100) / 100.0);
    summary.evening().ifPresent(evening -> facts.put("evening", evening));
    facts.put("rafts_not_photographed", summary.notPhotographed());
    facts.put("rafts_not_photographed_by_evening", byEvening(summary));
    facts.put("rafts_unassigned", summary.unassigned().stream().map(RunFacts::text).toList());
    facts.put("corrections", CorrectionNotes.lines(summary.corrections()));
    facts.put("notes", summary.notes());
    facts.put("photo_sha256", hashes(pass.photos()));
    return facts;
  }

  /** Says which stations were not as they were on which evenings. */
  static List<Object> stations(List<StationDoubt> doubts) {
    List<Object> all = new ArrayList<>();
    for (StationDoubt doubt : doubts) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("station", doubt.station());
      one.put("evening", doubt.evening());
      one.put("held", doubt.holds());
      one.put("finding", doubt.finding());
      one.put("remedy", doubt.remedy());
      all.add(one);
    }
    return all;
  }

  private static Map<String, Object> settings(RunRequest request, Tools tools) {
    Map<String, Object> settings = new LinkedHashMap<>();
    settings.put("photos", request.photos().toAbsolutePath().normalize());
    settings.put("book", request.book().toAbsolutePath().normalize());
    settings.put("book_sha256", tools.farm().bookHash());
    settings.put("workers", request.workers());
    settings.put("pictures", tools.pictures().wanted());
    return settings;
  }

  private static Map<String, Object> timing(FirstPass pass) {
    long fresh = pass.photos().stream().filter(m -> m.source() == Measured.Source.FRESH).count();
    Map<String, Object> timing = new LinkedHashMap<>();
    timing.put("elapsed_s", pass.clock().elapsedS());
    timing.put("measuring_s", pass.clock().measuringS());
    timing.put("photos_measured", fresh);
    return timing;
  }

  private static Map<String, Object> system() {
    Map<String, Object> system = new LinkedHashMap<>();
    system.put("java", Runtime.version());
    system.put("java_vendor", System.getProperty("java.vendor"));
    system.put("os", System.getProperty("os.name") + " " + System.getProperty("os.version"));
    system.put("arch", System.getProperty("os.arch"));
    system.put("cores", Runtime.getRuntime().availableProcessors());
    return system;
  }

  private static Map<String, Object> byEvening(RunSummary summary) {
    Map<String, Object> evenings = new LinkedHashMap<>();
    summary.missing().forEach((evening, rafts) -> evenings.put(evening.toString(), rafts));
    return evenings;
  }

  private static String text(Unassigned raft) {
    return raft.photo() + ": " + raft.why();
  }

  private static Map<String, Object> photos(RunSummary summary) {
    Map<String, Object> photos = new LinkedHashMap<>();
    summary.photos().forEach((status, n) -> photos.put(status.name().toLowerCase(Locale.ROOT), n));
    return photos;
  }

  private static Map<String, Object> hashes(List<Measured> measured) {
    Map<String, Object> hashes = new TreeMap<>();
    measured.forEach(m -> hashes.put(m.measure().photo(), m.measure().sha256()));
    return hashes;
  }
}
