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

/**
 * A run over a set from the proving ground's own renderer.
 *
 * @param work its folder
 * @param sites {@code sites.csv} of the run
 */
record RenderedRun(Path work, Path sites) {
  private static final double MEGAPIXELS = 2.5;

  /** At this size the fixed station's pixels are 1.9 mm wide, the bench's 1.5. */
  private static final double COARSE_MEGAPIXELS = 0.6;

  /** Renders the set of a seed, where it is not there, and runs over it. */
  static RenderedRun of(Bench bench, long seed) throws IOException {
    return of(bench.rendered(seed), new SetName.Order(seed, bench.photos(), MEGAPIXELS));
  }

  /** The same photos with a quarter of the pixels. */
  static RenderedRun coarse(Bench bench, long seed) throws IOException {
    return of(
        bench.rendered(seed).resolve("coarse"),
        new SetName.Order(seed, bench.photos(), COARSE_MEGAPIXELS));
  }

  /** Rafts that are photographed every second evening while their plants grow together. */
  static RenderedRun growing(Bench bench, long seed) throws IOException {
    return of(
        bench.rendered(seed).resolve("growing"),
        SetName.GROWING,
        new SetName.Order(seed, bench.photos(), MEGAPIXELS));
  }

  /** Small plants in substrates and holders of many kinds. */
  static RenderedRun fillings(Bench bench, long seed) throws IOException {
    return over(fillingsSet(bench, seed));
  }

  /** Renders such plants, where they are not there, without a run. */
  static Path fillingsSet(Bench bench, long seed) throws IOException {
    return set(
        bench.rendered(seed).resolve("fillings"),
        SetName.FILLINGS,
        new SetName.Order(seed, bench.photos(), MEGAPIXELS));
  }

  private static RenderedRun of(Path work, SetName.Order order) throws IOException {
    return of(work, SetName.CONDITIONS, order);
  }

  private static RenderedRun of(Path work, SetName name, SetName.Order order) throws IOException {
    return over(set(work, name, order));
  }

  private static Path set(Path work, SetName name, SetName.Order order) throws IOException {
    Path set = work.resolve("set");
    if (!Files.exists(set.resolve("truth.csv"))) {
      RenderSet.make(set, name, order, photo -> {});
    }
    return set;
  }

  private static RenderedRun over(Path set) throws IOException {
    Path work = set.getParent();
    Path sites = RunBatch.over(set.resolve("photos"), set.resolve("book"), work);
    return new RenderedRun(work, sites);
  }

  /** Measures its photos by the plain script. */
  Path plainScript() throws IOException {
    return Compare.write(work.resolve("plain-script.csv"), PlainScript.measure(set()));
  }

  /** Returns the folder of its photos, truth and book. */
  Path set() {
    return work.resolve("set");
  }

  private Path truth() {
    return set().resolve("truth.csv");
  }

  /** Returns how many photos it has. */
  int photos() throws IOException {
    return (int) byCondition().stream().map(s -> s.key().photo()).distinct().count();
  }

  /** Returns the truth of all sites, by condition. */
  List<TruthSite> byCondition() throws IOException {
    return TruthSite.read(truth(), "condition");
  }

  /** Returns the truth of all sites, by crop. */
  List<TruthSite> byCrop() throws IOException {
    return TruthSite.read(truth(), "crop");
  }

  /** Returns the truth of the sites whose light can be measured in, by leaf habit. */
  List<TruthSite> byHabit() throws IOException {
    Set<SiteKey> answerable =
        byCondition().stream()
            .filter(s -> !s.look().equals(ScoreRun.UNANSWERABLE))
            .map(TruthSite::key)
            .collect(Collectors.toSet());
    return TruthSite.read(truth(), "habit").stream()
        .filter(s -> answerable.contains(s.key()))
        .toList();
  }
}
