// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.Cells;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvTable;

/** Reads {@code placements.csv}. */
final class PlacementReader {
  static final Columns COLUMNS =
      new Columns(List.of("station", "slot", "raft", "from"), List.of("to"));

  private final Map<String, Station> stations;
  private final Known stationNames;
  private final Known rafts;
  private final Findings findings;
  private final List<Placement> earlier = new ArrayList<>();

  PlacementReader(Parts parts, Known rafts, Findings findings) {
    this.stations = parts.stations();
    this.stationNames = parts.stationNames();
    this.rafts = rafts;
    this.findings = findings;
  }

  List<Placement> read(CsvTable table) {
    return LogReader.rows(table, findings, this::placement);
  }

  private Optional<Placement> placement(Cells cells) {
    String station = cells.required("station");
    String slot = cells.required("slot");
    String raft = CellNames.required(cells, "raft");
    cells.required("from");
    Optional<LocalDate> from = cells.date("from");
    Optional<LocalDate> to = cells.date("to");
    if (from.isPresent() && to.filter(t -> t.isBefore(from.get())).isPresent()) {
      cells.error(
          "to", "\"" + to.get() + "\" is before from " + from.get(), "mend one of the two dates");
    }
    if (!cells.sound()) {
      return Optional.empty();
    }
    checkNames(cells, station, slot, raft);
    Placement placement = new Placement(cells.line(), station, slot, raft, from.get(), to);
    checkOverlap(cells, placement);
    if (!cells.sound()) {
      return Optional.empty();
    }
    earlier.add(placement);
    return Optional.of(placement);
  }

  private void checkNames(Cells cells, String station, String slot, String raft) {
    if (stationNames.lacks(station)) {
      cells.unknown("station", station, stationNames.names());
    }
    Optional<Station> known = Optional.ofNullable(stations.get(station));
    if (known.filter(s -> s.kind() == Station.Kind.PASSING).isPresent()) {
      cells.error(
          "station",
          "\"" + station + "\" is a passing station, which has no slots",
          "name a fixed station, or delete the row");
      return;
    }
    known
        .map(s -> s.slots().stream().map(Slot::name).toList())
        .filter(slots -> !slots.contains(slot))
        .ifPresent(slots -> cells.unknown("slot", slot, slots));
    if (rafts.lacks(raft)) {
      cells.unknown("raft", raft, rafts.names());
    }
  }

  private void checkOverlap(Cells cells, Placement placement) {
    for (Placement other : earlier) {
      boolean sameSlot =
          other.station().equals(placement.station()) && other.slot().equals(placement.slot());
      if (placement.overlaps(other) && sameSlot) {
        cells.error(
            "slot",
            "\""
                + placement.slot()
                + "\" holds "
                + other.raft()
                + " of line "
                + other.line()
                + " on the same days",
            "write in line " + other.line() + " to which day it lay there");
        return;
      }
      if (placement.overlaps(other) && other.raft().equals(placement.raft())) {
        cells.error(
            "raft",
            "\""
                + placement.raft()
                + "\" lies in slot "
                + other.slot()
                + " of line "
                + other.line()
                + " on the same days",
            "write in line " + other.line() + " to which day it lay there");
        return;
      }
    }
  }
}
