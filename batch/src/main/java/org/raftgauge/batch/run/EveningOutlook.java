// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import org.raftgauge.core.evening.Task;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.LookBackScore;
import org.raftgauge.core.forecast.PlanRow;
import org.raftgauge.core.forecast.Resources;
import org.raftgauge.core.grader.GraderHealth;

/**
 * What is to come from an evening, and how far it can be trusted.
 *
 * @param forecast of rafts, ponds and crops
 * @param plan a harvest plan as proposed
 * @param graders how each stands
 * @param scores how forecasts of the latest harvests came out
 * @param tasks what it gives to do: harvests, plants to weigh
 * @param remarks what else a reader must know, such as a grader that cannot be read
 * @param resources what ponds yielded from light and water; none where the book tells neither
 */
public record EveningOutlook(
    EveningForecast forecast,
    List<PlanRow> plan,
    List<GraderHealth> graders,
    List<LookBackScore> scores,
    List<Task> tasks,
    List<String> remarks,
    List<Resources> resources) {

  /** Copies the lists. */
  public EveningOutlook {
    plan = List.copyOf(plan);
    graders = List.copyOf(graders);
    scores = List.copyOf(scores);
    tasks = List.copyOf(tasks);
    remarks = List.copyOf(remarks);
    resources = List.copyOf(resources);
  }
}
