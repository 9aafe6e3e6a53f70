// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.history.PlantSeries;

/**
 * What every part of the page is gathered from.
 *
 * @param input what the page is made of
 * @param verdicts its verdicts, by place
 * @param series what was seen of each plant, by raft
 * @param files the pictures
 * @param texts words numbers
 */
record Gathered(
    ReportInput input,
    Verdicts verdicts,
    Map<String, List<PlantSeries>> series,
    RunFiles files,
    Texts texts) {

  static Gathered of(ReportInput input, RunFiles files) {
    return new Gathered(
        input,
        new Verdicts(input.verdicts()),
        input.series().stream().collect(Collectors.groupingBy(s -> s.planting().raft())),
        files,
        new Texts(input.book().units()));
  }

  /** Returns the series of the plants that stand on a raft. */
  List<PlantSeries> seriesOf(String raft) {
    return series.getOrDefault(raft, List.of());
  }

  CropBook book() {
    return input.book();
  }

  /** Returns the latest evening of the run. */
  Optional<LocalDate> tonight() {
    return input.run().summary().evening();
  }
}
