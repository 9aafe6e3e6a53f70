// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.render.Develop;
import org.raftgauge.proving.render.Exposure;
import org.raftgauge.proving.render.RenderPhoto;
import org.raftgauge.proving.render.Shot;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.scene.Medium;
import org.raftgauge.proving.scene.Pond;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.set.PictureFiles;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Tint;

/** Renders a season's rafts on the evenings on which they are photographed. */
final class PhotographSeason {
  private final SeasonBench bench;
  private final long seed;

  PhotographSeason(SeasonBench bench, long seed) {
    this.bench = bench;
    this.seed = seed;
  }

  /** A raft on an evening. */
  record Shown(String raft, List<Plant> plants, LocalDate start, int dat) {
    String file() {
      return start.plusDays(dat) + "_" + raft + ".jpg";
    }
  }

  /**
   * Takes all photos, but those that are in the folder already.
   *
   * @return how many the season has
   */
  int into(Path folder, Season season) throws IOException {
    List<Shown> shown = new ArrayList<>();
    for (int cycle = 0; cycle < season.past.size(); cycle++) {
      add(shown, season.past.get(cycle), Season.starts(cycle), Season.LAST_PHOTO_DAT);
    }
    add(shown, season.now, Season.TONIGHTS, SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD);
    Files.createDirectories(folder);
    try {
      shown.parallelStream().forEach(each -> take(each, folder));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return shown.size();
  }

  private static void add(List<Shown> shown, List<Plant> plants, LocalDate start, int last) {
    Map<String, List<Plant>> rafts =
        plants.stream()
            .collect(Collectors.groupingBy(p -> p.raft, TreeMap::new, Collectors.toList()));
    for (int dat : Season.photographedOn(last)) {
      rafts.forEach((raft, on) -> shown.add(new Shown(raft, on, start, dat)));
    }
  }

  /** Takes one photo, unless it is in the folder already. */
  void take(Shown shown, Path folder) {
    Path file = folder.resolve(shown.file());
    if (Files.exists(file)) {
      return;
    }
    Random random = new Random(Objects.hash(seed, shown.raft, shown.dat));
    Exposure view = RenderPhoto.render(scene(shown), bench.camera(random), light(random));
    Shot shot =
        new Shot(
            new Tint(0.97 + 0.06 * random.nextDouble(), 1, 0.96 + 0.08 * random.nextDouble())
                .times(0.82 + 0.16 * random.nextDouble()),
            new Shot.Optics(0.4 + 0.2 * random.nextDouble(), 0, 0.1, 0.01),
            new Shot.Noise(0.0002, 0.0012),
            new Shot.Finish(0.3 * random.nextDouble(), 0.5 * random.nextDouble(), 88),
            random.nextInt(1 << 30) + 1L);
    try {
      PictureFiles.writeJpeg(Develop.develop(view, shot), file, shot.finish().jpegQuality());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Scene scene(Shown shown) {
    Random own = new Random(Objects.hash(seed, shown.raft));
    BoardLook look =
        new BoardLook(
            Tint.srgb(0xeeeeec),
            0.3 * own.nextDouble(),
            0.2 * own.nextDouble(),
            0.15,
            Medium.of(Tint.srgb(0x4a3526)),
            true,
            own.nextInt(1 << 20));
    Map<SiteId, Plant> plants =
        shown.plants.stream().collect(Collectors.toMap(p -> p.site, p -> p));
    List<Sown> sown = new ArrayList<>();
    for (SiteId site : bench.layout().grid().sites()) {
      sown.add(sown(plants.get(site), shown.dat));
    }
    Raft raft = new Raft(shown.raft, bench.layout(), new Placement(0, 0, 0), look, sown, 1);
    Pond pond = Pond.allAround(own.nextInt(1 << 20));
    return new Scene(List.of(raft), List.of(), pond, new Mesh());
  }

  /** Returns a plant at its size of that day; it keeps its leaves' order as it grows. */
  private Sown sown(Plant plant, int dat) {
    if (!plant.standsOn(dat)) {
      return new Sown(plant.site, "empty", Optional.empty(), true);
    }
    long shape = Objects.hash(seed, plant.raft, plant.site);
    Mesh grown = bench.plant(Math.exp(plant.lnArea[dat]), shape);
    return new Sown(plant.site, "ok", Optional.of(grown), true);
  }

  private static Light light(Random random) {
    double sun = random.nextInt(3) == 0 ? 0.35 * random.nextDouble() : 0;
    return new Light(
        new Tint(1, 1, 1).times(1 - sun),
        new Tint(1.05, 1, 0.9).times(sun),
        0.5 * random.nextGaussian(),
        0.5 * random.nextGaussian(),
        0.1,
        new Light.Field(
            0,
            0.08 * random.nextGaussian(),
            0.08 * random.nextGaussian(),
            0,
            random.nextInt(1 << 20)));
  }
}
