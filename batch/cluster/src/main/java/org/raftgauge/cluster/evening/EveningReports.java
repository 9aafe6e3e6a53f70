// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.evening;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.batch.run.EveningOutlook;
import org.raftgauge.batch.run.JudgeHistory;
import org.raftgauge.cluster.rows.ReportColumns;
import org.raftgauge.core.forecast.HarvestPlan;
import org.raftgauge.core.report.CurvesTable;
import org.raftgauge.core.report.ForecastTable;
import org.raftgauge.core.report.PlanTable;
import org.raftgauge.core.report.SupplyTable;
import org.raftgauge.core.report.VerdictsTable;
import org.raftgauge.core.report.WorklistTable;

/** The reports of an evening as the texts of their CSV files. */
final class EveningReports {

  private EveningReports() {}

  static Map<String, String> of(JudgeHistory.Judgement judged) {
    Map<String, String> reports = new LinkedHashMap<>();
    reports.put("verdicts", VerdictsTable.csv(judged.result().verdicts()));
    reports.put("curves", CurvesTable.csv(judged.result().curves()));
    reports.put("worklist", WorklistTable.csv(judged.result().worklist()));
    judged.outlook().ifPresent(outlook -> add(outlook, reports));
    return reports;
  }

  private static void add(EveningOutlook outlook, Map<String, String> reports) {
    reports.put("forecast", ForecastTable.of(outlook.forecast().rows()));
    reports.put("supply", SupplyTable.of(outlook.forecast().supply()));
    reports.put("plan", PlanTable.plan(outlook.plan()));
    reports.put(
        "plan-totals", PlanTable.totals(HarvestPlan.totals(outlook.forecast(), outlook.plan())));
  }

  /** Returns the columns of each report. */
  static Map<String, List<String>> headers() {
    Map<String, String> empty = new LinkedHashMap<>();
    empty.put("verdicts", VerdictsTable.csv(List.of()));
    empty.put("curves", CurvesTable.csv(List.of()));
    empty.put("worklist", WorklistTable.csv(List.of()));
    empty.put("forecast", ForecastTable.of(List.of()));
    empty.put("supply", SupplyTable.of(List.of()));
    empty.put("plan", PlanTable.plan(List.of()));
    empty.put("plan-totals", PlanTable.totals(List.of()));
    Map<String, List<String>> headers = new LinkedHashMap<>();
    empty.forEach((report, csv) -> headers.put(report, ReportColumns.cells(csv).header()));
    return headers;
  }
}
