// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.forecast;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.HarvestPlan;
import org.raftgauge.core.forecast.PlanRow;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.table.Columns;
import org.raftgauge.core.table.CsvRow;
import org.raftgauge.core.table.CsvTable;
import org.raftgauge.core.table.DateText;

/** Reads a harvest plan that a grower edited. */
final class ReadPlan {
  private static final Columns COLUMNS = new Columns(List.of("raft", "harvest_on"), List.of());

  private ReadPlan() {}

  static List<PlanRow> of(Path file, EveningForecast forecast) throws InputException {
    CsvTable table = CsvTable.read(file, file.getFileName().toString(), COLUMNS);
    Findings findings = new Findings();
    List<PlanRow> rows = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (CsvRow row : table.rows()) {
      String day = row.text("harvest_on");
      Optional<LocalDate> on =
          day.isEmpty() ? Optional.empty() : DateText.read(row.place("harvest_on"), day, findings);
      PlanRow plan = new PlanRow(row.text("raft"), on);
      HarvestPlan.wrongRaft(forecast, plan)
          .ifPresent(why -> findings.error(row.place("raft"), why, "correct it or drop the row"));
      HarvestPlan.wrongDay(forecast, plan)
          .ifPresent(
              why ->
                  findings.error(
                      row.place("harvest_on"), why, "write one of them, or leave the cell empty"));
      if (!seen.add(plan.raft())) {
        findings.error(
            row.place("raft"), "raft \"" + plan.raft() + "\" stands twice", "keep one row of it");
      }
      rows.add(plan);
    }
    if (!table.problems().isEmpty()) {
      throw new InputException(table.problems());
    }
    if (!findings.list().isEmpty()) {
      throw new InputException(findings.list());
    }
    return rows;
  }
}
