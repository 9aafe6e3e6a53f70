// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.Cells;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvRow;
import org.raftgauge.core.table.CsvTable;
import org.raftgauge.core.table.NumberRange;

/** Reads weighings, harvests, calls, climate and seen rows. */
final class LogReader {
  static final Columns WEIGHINGS =
      new Columns(
          List.of("raft", "site", "weighed_at", "fresh_weight_g"),
          List.of(
              "top_height_mm",
              "state",
              // A filled picks.csv is a weighings.csv; these of its columns are passed over.
              "pond",
              "berth",
              "crop",
              "variety",
              "closed",
              "area_cm2",
              "predicted_weight_g",
              "part",
              "parts"));
  static final Columns HARVESTS =
      new Columns(List.of("raft", "harvested_at", "heads", "total_weight_g"), List.of());
  static final Columns CALLS =
      new Columns(List.of("raft", "called_on", "call"), List.of("site", "by", "note"));
  static final Columns CLIMATE =
      new Columns(
          List.of("date"), List.of("pond", "mean_air_c", "dli_mol_m2", "water_l", "feed_g"));
  static final Columns SEEN =
      new Columns(List.of("item"), List.of("until", "by", "note", "seen_on"));

  /** The verdicts of the design, which a grower's call is one of. */
  private static final List<String> VERDICTS =
      List.of("on-track", "lagging", "ahead", "stalled", "pale", "dead", "empty", "held");

  /** What the sheet of picks asks to write where a gap or a dead plant is found. */
  private static final String NO_PLANT = "none";

  private final FarmDay farmDay;
  private final Known rafts;
  private final Known ponds;
  private final Findings findings;
  private final Map<List<String>, Integer> weighingLines = new HashMap<>();
  private final Map<List<String>, Integer> climateLines = new HashMap<>();

  LogReader(FarmDay farmDay, Rafts rafts, Findings findings) {
    this.farmDay = farmDay;
    this.rafts = rafts.known();
    this.ponds = rafts.knownPonds();
    this.findings = findings;
  }

  static <T> List<T> rows(CsvTable table, Findings findings, Function<Cells, Optional<T>> reader) {
    findings.addAll(table.problems());
    List<T> read = new ArrayList<>();
    for (CsvRow row : table.rows()) {
      reader.apply(new Cells(row, findings)).ifPresent(read::add);
    }
    return read;
  }

  List<Weighing> weighings(CsvTable table) {
    return rows(table, findings, this::weighing);
  }

  private Optional<Weighing> weighing(Cells cells) {
    if (isNotWeighed(cells)) {
      return Optional.empty();
    }
    String raft = knownRaft(cells);
    cells.required("site");
    Optional<SiteId> site = CellNames.site(cells, "site");
    Optional<OffsetDateTime> at = CellNames.time(cells, "weighed_at", farmDay);
    cells.required("fresh_weight_g");
    OptionalDouble weight = cells.number("fresh_weight_g", NumberRange.aboveZero(20_000));
    OptionalDouble height = cells.number("top_height_mm", NumberRange.from(0, 3_000));
    Optional<Weighing.State> state = cells.choice("state", Weighing.State.values());
    if (cells.sound()) {
      List<String> once = List.of(raft, site.get().toString(), at.get().toInstant().toString());
      Optional.ofNullable(weighingLines.putIfAbsent(once, cells.line()))
          .ifPresent(line -> cells.error("weighed_at", weighedTwice(line), "keep one of the two"));
    }
    return cells.sound()
        ? Optional.of(
            new Weighing(
                cells.line(),
                raft,
                site.orElseThrow(),
                at.orElseThrow(),
                weight.orElseThrow(),
                height,
                state))
        : Optional.empty();
  }

  List<HarvestTotal> harvests(CsvTable table) {
    return rows(table, findings, this::harvest);
  }

  private Optional<HarvestTotal> harvest(Cells cells) {
    String raft = knownRaft(cells);
    Optional<OffsetDateTime> at = CellNames.time(cells, "harvested_at", farmDay);
    cells.required("heads");
    double heads = cells.number("heads", NumberRange.from(0, 1e6)).orElse(0);
    if (heads != Math.rint(heads)) {
      cells.error("heads", "\"" + cells.text("heads") + "\" is not a whole number", "count heads");
    }
    cells.required("total_weight_g");
    OptionalDouble weight = cells.number("total_weight_g", NumberRange.from(0, 1e8));
    return cells.sound()
        ? Optional.of(
            new HarvestTotal(
                cells.line(), raft, at.orElseThrow(), (int) heads, weight.orElseThrow()))
        : Optional.empty();
  }

  List<Call> calls(CsvTable table) {
    return rows(table, findings, this::call);
  }

  private Optional<Call> call(Cells cells) {
    String raft = knownRaft(cells);
    Optional<SiteId> site = CellNames.site(cells, "site");
    cells.required("called_on");
    Optional<LocalDate> on = cells.date("called_on");
    String call = cells.required("call");
    if (!call.isEmpty() && !VERDICTS.contains(call)) {
      cells.unknown("call", call, VERDICTS);
    }
    return cells.sound()
        ? Optional.of(
            new Call(
                cells.line(),
                raft,
                site,
                on.orElseThrow(),
                call,
                cells.text("by"),
                cells.text("note")))
        : Optional.empty();
  }

  List<ClimateDay> climate(CsvTable table) {
    return rows(table, findings, this::climateDay);
  }

  private Optional<ClimateDay> climateDay(Cells cells) {
    String pond = cells.text("pond");
    if (!pond.isEmpty() && ponds.lacks(pond)) {
      cells.unknown("pond", pond, ponds.names());
    }
    cells.required("date");
    Optional<LocalDate> date = cells.date("date");
    OptionalDouble air = cells.number("mean_air_c", NumberRange.from(-40, 60));
    OptionalDouble light = cells.number("dli_mol_m2", NumberRange.from(0, 100));
    OptionalDouble water = cells.number("water_l", NumberRange.from(0, 1e7));
    OptionalDouble feed = cells.number("feed_g", NumberRange.from(0, 1e7));
    date.map(d -> dayAtPond(pond, d))
        .map(day -> climateLines.putIfAbsent(day, cells.line()))
        .ifPresent(line -> cells.error("date", twice(date.get(), line), "keep one of the two"));
    return cells.sound()
        ? Optional.of(
            new ClimateDay(cells.line(), pond, date.orElseThrow(), air, light, water, feed))
        : Optional.empty();
  }

  private static List<String> dayAtPond(String pond, LocalDate date) {
    return List.of(pond, date.toString());
  }

  /** Says whether a row of a filled list of picks is that of a plant that was not weighed. */
  private static boolean isNotWeighed(Cells cells) {
    String weight = cells.text("fresh_weight_g");
    return weight.equalsIgnoreCase(NO_PLANT)
        || (weight.isEmpty() && cells.text("weighed_at").isEmpty());
  }

  private static String weighedTwice(int line) {
    return "line " + line + " weighs the same plant at the same time";
  }

  private static String twice(LocalDate date, int line) {
    return "\"" + date + "\" stands on line " + line + " too, for the same pond";
  }

  List<SeenItem> seen(CsvTable table) {
    return rows(table, findings, LogReader::seenItem);
  }

  private static Optional<SeenItem> seenItem(Cells cells) {
    String item = cells.required("item");
    Optional<LocalDate> until = cells.date("until");
    Optional<LocalDate> seenOn = cells.date("seen_on");
    return cells.sound()
        ? Optional.of(
            new SeenItem(cells.line(), item, until, cells.text("by"), cells.text("note"), seenOn))
        : Optional.empty();
  }

  private String knownRaft(Cells cells) {
    String raft = CellNames.required(cells, "raft");
    if (cells.sound() && rafts.lacks(raft)) {
      cells.unknown("raft", raft, rafts.names());
    }
    return raft;
  }
}
