// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.raftgauge.proving.accuracy.SiteKey;
import org.raftgauge.proving.accuracy.TruthSite;
import org.raftgauge.proving.pace.WholeRun.Call;
import org.raftgauge.proving.set.RenderSet;
import org.raftgauge.proving.set.SetName;

/**
 * The pace over one rendered set.
 *
 * @param megapixels of its photos
 * @param photos their names
 * @param own the program's library
 * @param stages share of its time in each stage
 * @param decoder the system's decoder, where there is one
 * @param script the plain script, where it could run
 * @param runs of the whole program, by how it was called
 * @param longRun what a second worker brings over many photos
 * @param truth of the sites
 */
record PaceOfSet(
    double megapixels,
    List<String> photos,
    Lap own,
    Map<String, Double> stages,
    Optional<Lap> decoder,
    Optional<Lap> script,
    Map<Call, WholeRun> runs,
    LongRun longRun,
    List<TruthSite> truth) {

  /**
   * Measures.
   *
   * @param asked what was asked for
   * @param megapixels of the set, which is rendered if it is not there
   * @param say told what is going on
   */
  static PaceOfSet of(PacePage.Asked asked, double megapixels, Consumer<String> say)
      throws IOException, InterruptedException {
    Path set =
        asked
            .work()
            .resolve(
                "speed-"
                    + (int) megapixels
                    + "-"
                    + asked.order().seed()
                    + "-"
                    + asked.order().photos());
    if (!Files.exists(set.resolve("truth.csv"))) {
      SetName.Order order = asked.order();
      RenderSet.make(
          set, SetName.SPEED, new SetName.Order(order.seed(), order.photos(), megapixels), say);
    }
    Path task = asked.work().resolve("task.json");
    List<String> photos = ScriptTask.write(set, task);
    say.accept("decoder");
    Optional<Lap> decoder = DecoderLap.run(set.resolve("photos"), photos, asked.rounds());
    say.accept("plain script");
    Optional<Lap> script =
        ScriptLap.run(
            asked.root().resolve("batch/proving/yardstick/plain_opencv.py"), task, asked.rounds());
    say.accept("library");
    Lap own = OwnLap.run(set, photos, asked.rounds());
    Map<String, Double> stages = OwnLap.stages(set, photos, asked.rounds());
    Map<Call, WholeRun> runs = new LinkedHashMap<>();
    Path options = asked.options();
    for (Call call :
        List.of(
            new Call(options, photos.size(), 1, false),
            new Call(options, photos.size(), 2, false),
            new Call(options, photos.size(), 2, true))) {
      say.accept("run, workers " + call.workers() + (call.overlays() ? ", overlays" : ""));
      runs.put(call, WholeRun.over(set, asked.work().resolve("run"), call));
    }
    say.accept("long runs, workers 1 and 2");
    LongRun longRun = LongRun.over(set, asked, photos.size());
    List<TruthSite> truth = TruthSite.read(set.resolve("truth.csv"), "stage");
    return new PaceOfSet(megapixels, photos, own, stages, decoder, script, runs, longRun, truth);
  }

  /**
   * Returns the median error of the areas of open sites, as a share; a site that is missing counts
   * as 1.
   */
  double medianError(Lap lap) {
    return Lap.quantile(
        truth.stream().filter(TruthSite::open).mapToDouble(t -> error(lap, t)).toArray(), 0.5);
  }

  private static double error(Lap lap, TruthSite site) {
    SiteKey key = site.key();
    Double area = lap.areaCm2().get(key);
    return area == null ? 1 : Math.abs(area / site.projectedAreaCm2() - 1);
  }
}
