// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.proving.accuracy.PlainScript;
import org.raftgauge.proving.accuracy.ScoreRun;
import org.raftgauge.proving.accuracy.SiteKey;
import org.raftgauge.proving.accuracy.TruthSite;
import org.raftgauge.proving.set.RenderSet;
import org.raftgauge.proving.set.SetName;

/** A fresh set from the proving ground's own renderer: many conditions of light, board and dirt. */
final class RenderedSection {
  private static final double MEGAPIXELS = 2.5;

  private RenderedSection() {}

  static Section make(Bench bench) throws IOException {
    String name = "rendered-" + bench.seed() + "-" + bench.photos();
    Path work = bench.work().resolve(name);
    Path set = work.resolve("set");
    Path truth = set.resolve("truth.csv");
    if (!Files.exists(truth)) {
      SetName.Order order = new SetName.Order(bench.seed(), bench.photos(), MEGAPIXELS);
      RenderSet.make(set, SetName.CONDITIONS, order, photo -> {});
    }
    Path sites = RunBatch.over(set.resolve("photos"), set.resolve("book"), work);
    Path plain = Compare.write(work.resolve("plain-script.csv"), PlainScript.measure(set));
    List<TruthSite> byCondition = TruthSite.read(truth, "condition");
    Set<SiteKey> answerable =
        byCondition.stream()
            .filter(s -> !s.look().equals(ScoreRun.UNANSWERABLE))
            .map(TruthSite::key)
            .collect(Collectors.toSet());
    List<TruthSite> byHabit =
        TruthSite.read(truth, "habit").stream().filter(s -> answerable.contains(s.key())).toList();
    Compare conditions = Compare.on(byCondition, sites, plain);
    Compare habits = Compare.on(byHabit, sites, plain);
    String body =
        "Photos drawn from the conditions set of the proving ground, seed "
            + bench.seed()
            + ", "
            + bench.photos()
            + " asked for. `purple-lamp` cannot be measured by colour: refusing is right there,"
            + " and every refusal is counted as a miss in its own row and in `all`.\n\nBy condition:\n\n"
            + conditions.tables()
            + "By leaf habit, purple lamps left out:\n\n"
            + SummaryRows.HEAD
            + SummaryRows.of(habits.ours(), habits.plain());
    return new Section(
        "Rendered photos under many conditions",
        body,
        conditions.row("rendered, all conditions but purple lamps", ScoreRun.ANSWERABLE));
  }
}
