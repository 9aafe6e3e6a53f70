// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.HarvestPlan;
import org.raftgauge.core.forecast.PlanRow;
import org.raftgauge.core.report.ForecastTable;
import org.raftgauge.core.report.PlanTable;
import org.raftgauge.core.report.ResourcesTable;
import org.raftgauge.core.report.SupplyTable;

/** Writes the tables of a forecast. */
public final class OutlookFiles {

  private OutlookFiles() {}

  /**
   * Writes {@code forecast.csv}, {@code supply.csv} and {@code plan-totals.csv}.
   *
   * @param folder to write to
   * @param forecast of an evening
   * @param plan which raft on which day
   * @return true
   * @throws IOException if a file cannot be written
   */
  public static boolean write(Path folder, EveningForecast forecast, List<PlanRow> plan)
      throws IOException {
    Files.writeString(folder.resolve("forecast.csv"), ForecastTable.of(forecast.rows()));
    Files.writeString(folder.resolve("supply.csv"), SupplyTable.of(forecast.supply()));
    Files.writeString(
        folder.resolve("plan-totals.csv"), PlanTable.totals(HarvestPlan.totals(forecast, plan)));
    return true;
  }

  /**
   * Writes {@code remarks.txt}: what a forecast leaves out or doubts, a line each.
   *
   * @param folder to write to
   * @param remarks may be none
   * @return the file
   * @throws IOException if it cannot be written
   */
  public static Path remarks(Path folder, List<String> remarks) throws IOException {
    return Files.writeString(
        folder.resolve("remarks.txt"), remarks.isEmpty() ? "" : String.join("\n", remarks) + "\n");
  }

  /**
   * Writes the tables of an evening with the plan proposed, {@code plan.csv}, to edit, and {@code
   * resources.csv} where the book tells light or water.
   */
  static boolean write(Path folder, EveningOutlook outlook) throws IOException {
    if (!outlook.resources().isEmpty()) {
      Files.writeString(folder.resolve("resources.csv"), ResourcesTable.of(outlook.resources()));
    }
    Files.writeString(folder.resolve("plan.csv"), PlanTable.plan(outlook.plan()));
    remarks(folder, outlook.remarks());
    return write(folder, outlook.forecast(), outlook.plan());
  }
}
