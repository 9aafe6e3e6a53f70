// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.raftgauge.proving.accuracy.PlainScript;
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
    Compare conditions = Compare.on(TruthSite.read(truth, "condition"), sites, plain);
    Compare habits = Compare.on(TruthSite.read(truth, "habit"), sites, plain);
    String body =
        "Photos drawn from the conditions set of the proving ground, seed "
            + bench.seed()
            + ", "
            + bench.photos()
            + " asked for. `purple-lamp` cannot be measured by colour: refusing is right there,"
            + " and every refusal is counted as a miss all the same.\n\nBy condition:\n\n"
            + conditions.tables()
            + "By leaf habit:\n\n"
            + SummaryRows.HEAD
            + SummaryRows.of(habits.ours(), habits.plain());
    return new Section(
        "Rendered photos under many conditions",
        body,
        conditions.row("rendered, all conditions", "all"));
  }
}
