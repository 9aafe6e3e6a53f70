// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pair;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.render.Develop;
import org.raftgauge.proving.render.Exposure;
import org.raftgauge.proving.render.RenderPhoto;
import org.raftgauge.proving.render.Shot;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.set.PictureFiles;
import org.raftgauge.proving.solid.Tint;

/** Takes both photos of a canopy. */
final class PhotographPair {
  private final PairStation station;
  private final PairCanopy canopy;
  private final long seed;

  PhotographPair(PairStation station, PairCanopy canopy, long seed) {
    this.station = station;
    this.canopy = canopy;
    this.seed = seed;
  }

  /** Takes both photos, unless they are in the folder already; returns their files. */
  List<Path> into(Path work, Scene scene) throws IOException {
    Path folder = work.resolve(seed + "-" + station.code());
    Path left = folder.resolve(canopy.code() + "_left.jpg");
    Path right = folder.resolve(canopy.code() + "_right.jpg");
    if (!Files.exists(left) || !Files.exists(right)) {
      take(scene, station.second(), new Side(right, 2, 0.93));
      take(scene, station.first(), new Side(left, 1, 1));
    }
    return List.of(left, right);
  }

  /** Where a photo goes, what its noise is drawn from, and its camera's exposure. */
  private record Side(Path file, int number, double exposure) {}

  private void take(Scene scene, Camera camera, Side side) throws IOException {
    Random random = new Random(seed * 131 + canopy.code().hashCode());
    double sun = canopy.noisy() ? 0 : 0.35 * random.nextDouble();
    Light light =
        new Light(
            new Tint(1, 1, 1).times(1 - sun),
            new Tint(1.05, 1, 0.9).times(sun),
            0.5 * random.nextGaussian(),
            0.5 * random.nextGaussian(),
            0.1,
            new Light.Field(0, 0.1 * random.nextGaussian(), 0.05, 0, random.nextInt(1 << 20)));
    Exposure view = RenderPhoto.render(scene, camera, light);
    Shot shot =
        new Shot(
            new Tint(1.02, 1, 0.97).times(0.85 * side.exposure),
            new Shot.Optics(0.5, 0, 0.1, 0.01),
            canopy.noisy() ? new Shot.Noise(0.0012, 0.0035) : new Shot.Noise(0.0002, 0.0012),
            new Shot.Finish(0.1, 0.2, 90),
            (random.nextInt(1 << 29) + 1L) * 2 + side.number);
    PictureFiles.writeJpeg(Develop.develop(view, shot), side.file, shot.finish().jpegQuality());
  }
}
