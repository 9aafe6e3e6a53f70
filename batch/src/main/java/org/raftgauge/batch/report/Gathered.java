// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.plot.RaftPlots;
import org.raftgauge.core.book.CropBook;

/**
 * What every part of the page is gathered from.
 *
 * @param input what the page is made of
 * @param verdicts its verdicts, by place
 * @param growth the plot of each raft's growth, by raft
 * @param files the pictures
 * @param texts words numbers
 */
record Gathered(
    ReportInput input,
    Verdicts verdicts,
    Map<String, List<RaftSheet.Plot>> growth,
    RunFiles files,
    Texts texts) {

  static Gathered of(ReportInput input, RunFiles files) {
    return new Gathered(
        input,
        new Verdicts(input.verdicts()),
        growth(input, files),
        files,
        new Texts(input.book().units()));
  }

  /** Finds the growth plots of rafts that were seen on two evenings or more. */
  private static Map<String, List<RaftSheet.Plot>> growth(ReportInput input, RunFiles files) {
    Texts texts = new Texts(input.book().units());
    Map<String, List<RaftSheet.Plot>> plots = new HashMap<>();
    input
        .run()
        .summary()
        .judged()
        .ifPresent(
            evening ->
                RaftPlots.files(evening.growth())
                    .forEach(
                        (name, raft) -> {
                          String file = "plots/" + name;
                          boolean grown =
                              raft.sites().stream().anyMatch(s -> s.points().size() > 1);
                          if (grown && files.exists().test(file)) {
                            plots
                                .computeIfAbsent(raft.raft(), r -> new ArrayList<>())
                                .add(new RaftSheet.Plot(file, texts.growth(raft)));
                          }
                        }));
    return plots;
  }

  CropBook book() {
    return input.book();
  }

  /** Returns the latest evening of the run. */
  Optional<LocalDate> tonight() {
    return input.run().summary().evening();
  }
}
