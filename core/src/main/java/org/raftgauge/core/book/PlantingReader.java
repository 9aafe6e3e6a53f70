// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.table.Cells;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvRow;
import org.raftgauge.core.table.CsvTable;

/** Reads {@code plantings.csv}. */
final class PlantingReader {
  static final Columns COLUMNS =
      new Columns(
          List.of("raft", "crop", "layout"),
          List.of(
              "pond",
              "berth",
              "variety",
              "sites",
              "sown_on",
              "transplanted_on",
              "harvest_by",
              "ended_on",
              "lot"));

  private final Parts parts;
  private final Known cropNames;
  private final Known layoutNames;
  private final Rafts rafts;
  private final Findings findings;
  private final Set<String> doubtedVarieties = new HashSet<>();
  private final Map<String, List<PlantingRow>> byRaft = new HashMap<>();

  PlantingReader(Parts parts, Rafts rafts, Findings findings) {
    this.parts = parts;
    this.cropNames = parts.cropNames();
    this.layoutNames = parts.layoutNames();
    this.rafts = rafts;
    this.findings = findings;
  }

  /**
   * Reads the rows. A row with an unknown crop, layout or site stays, since its raft is planted all
   * the same; a row whose own cells cannot be read is left out.
   */
  List<PlantingRow> read(CsvTable table) {
    findings.addAll(table.problems());
    rafts.miss(table);
    List<PlantingRow> rows = new ArrayList<>();
    for (CsvRow row : table.rows()) {
      Cells cells = new Cells(row, findings);
      Optional<Planting> planting = planting(cells);
      rafts.name(List.of(row.text("raft")), planting.isPresent());
      rafts.pond(row.text("pond"));
      planting.ifPresentOrElse(
          p -> rows.add(checked(new PlantingRow(row.line(), p), cells)),
          () -> checkNames(row.text("crop"), row.text("layout"), cells));
    }
    return rows;
  }

  private Optional<Planting> planting(Cells cells) {
    String raft = CellNames.required(cells, "raft");
    String pond = CellNames.optional(cells, "pond");
    String berth = CellNames.optional(cells, "berth");
    String crop = cells.required("crop");
    String variety = CellNames.optional(cells, "variety");
    String layout = cells.required("layout");
    String lot = CellNames.line(cells, "lot");
    Set<SiteId> sites = CellNames.sites(cells, "sites");
    Optional<LocalDate> sown = cells.date("sown_on");
    Optional<LocalDate> transplanted = cells.date("transplanted_on");
    Optional<LocalDate> harvestBy = cells.date("harvest_by");
    Optional<LocalDate> ended = cells.date("ended_on");
    if (sown.isEmpty() && transplanted.isEmpty() && cells.sound()) {
      cells.error(
          "transplanted_on",
          "neither sown_on nor transplanted_on is given",
          "fill in one of the two, as in 2026-04-06");
    }
    checkOrder(cells, new Day("transplanted_on", transplanted), new Day("sown_on", sown));
    Day start =
        transplanted.isPresent()
            ? new Day("transplanted_on", transplanted)
            : new Day("sown_on", sown);
    checkOrder(cells, new Day("harvest_by", harvestBy), start);
    if (ended.isPresent() && start.date().isPresent() && !ended.get().isAfter(start.date().get())) {
      cells.error(
          "ended_on",
          "\"" + ended.get() + "\" is not after " + start,
          "write the first day on which the planting is no longer there");
    }
    if (!cells.sound()) {
      return Optional.empty();
    }
    return Optional.of(
        new Planting(
            raft,
            pond,
            berth,
            crop,
            variety,
            layout,
            sites,
            sown,
            transplanted,
            harvestBy,
            ended,
            lot));
  }

  private record Day(String column, Optional<LocalDate> date) {
    @Override
    public String toString() {
      return column + " " + date.map(LocalDate::toString).orElse("");
    }
  }

  private static void checkOrder(Cells cells, Day later, Day earlier) {
    if (later.date().isPresent()
        && earlier.date().isPresent()
        && later.date().get().isBefore(earlier.date().get())) {
      cells.error(
          later.column(),
          "\"" + later.date().get() + "\" is before " + earlier,
          "mend one of the two dates");
    }
  }

  /** Names what is misspelt in a row that is left out, so that it need not be mended twice. */
  private void checkNames(String crop, String layout, Cells cells) {
    if (!crop.isEmpty() && cropNames.lacks(crop)) {
      cells.unknown("crop", crop, cropNames.names());
    }
    if (!layout.isEmpty()) {
      checkLayoutName(layout, cells);
    }
  }

  private void checkLayoutName(String layout, Cells cells) {
    if (!isKnown(layout)) {
      cells.unknown("layout", layout, layoutNames.names());
    }
  }

  /** Says what does not fit in a row that can be read, by itself and beside its raft's others. */
  private PlantingRow checked(PlantingRow row, Cells cells) {
    Planting planting = row.planting();
    List<PlantingRow> ofRaft = byRaft.computeIfAbsent(planting.raft(), r -> new ArrayList<>());
    if (cropNames.lacks(planting.crop())) {
      cells.unknown("crop", planting.crop(), cropNames.names());
      parts
          .broken()
          .keep(
              CropBook.PLANTED_CROP + " " + planting.crop(),
              findings.list().get(findings.list().size() - 1));
    }
    checkLayoutName(planting.layout(), cells);
    checkVariety(planting, cells);
    checkSites(planting, cells);
    ofRaft.stream()
        .filter(other -> other.planting().overlaps(planting))
        .findFirst()
        .ifPresentOrElse(
            other ->
                cells.error(
                    "raft",
                    "\""
                        + planting.raft()
                        + "\" holds the planting of line "
                        + other.line()
                        + " on the same sites and days",
                    "write ended_on of the earlier one, or give each its own sites"),
            () -> checkLayout(planting, cells, ofRaft));
    ofRaft.add(row);
    return row;
  }

  /** A board has one layout, whatever its sites are planted with. */
  private void checkLayout(Planting planting, Cells cells, List<PlantingRow> ofRaft) {
    ofRaft.stream()
        .filter(other -> other.planting().sharesRaftWith(planting))
        .filter(other -> !other.planting().layout().equals(planting.layout()))
        .filter(other -> isKnown(other.planting().layout()) && isKnown(planting.layout()))
        .findFirst()
        .ifPresent(
            other ->
                cells.error(
                    "layout",
                    "line "
                        + other.line()
                        + " has raft \""
                        + planting.raft()
                        + "\" in layout \""
                        + other.planting().layout()
                        + "\" on the same days, this one in \""
                        + planting.layout()
                        + "\"",
                    "a board has one layout: mend the wrong one, or write ended_on of the earlier"
                        + " planting"));
  }

  private boolean isKnown(String layout) {
    return !layoutNames.lacks(layout);
  }

  /** A variety need not be listed; one that is nearly listed is a slip, said once. */
  private void checkVariety(Planting planting, Cells cells) {
    String variety = planting.variety();
    List<String> listed = parts.varieties(planting.crop());
    if (!variety.isEmpty()
        && !listed.contains(variety)
        && NearestSpelling.of(variety, listed).isPresent()
        && doubtedVarieties.add(CropBook.cropKey(planting.crop(), variety))) {
      cells.warning(
          "variety",
          "\"" + variety + "\" is not listed under " + planting.crop() + " and measured as that",
          NearestSpelling.remedy(variety, listed));
    }
  }

  private void checkSites(Planting planting, Cells cells) {
    Layouts.inForce(parts.layouts(), planting.layout(), planting.startsOn())
        .ifPresent(
            layout ->
                planting.sites().stream()
                    .sorted()
                    .filter(site -> !layout.grid().has(site))
                    .findFirst()
                    .ifPresent(
                        site ->
                            cells.error(
                                "sites", Layouts.notOn(site, layout), Layouts.span(layout))));
  }
}
