// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.tray;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.raftgauge.core.book.Lens;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.render.Develop;
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
import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Tint;

/**
 * Photographs a tray on a bench: white, grey and black trays, lamps, and daylight from the side.
 */
final class PhotographTray {
  /** Size of the photos, px. */
  static final int WIDTH_PX = 1700;

  /** Height of the photos, px. */
  static final int HEIGHT_PX = 3100;

  /** Deck mm a px under the camera. */
  static final double MM_PER_PX = 0.25;

  /** Height of the camera, mm. */
  static final double HEIGHT_MM = 1400;

  private static final int[] TRAYS = {0xeeeeec, 0x8d9093, 0x2b2d2f};
  private static final int[] PLUGS = {0x4a3526, 0x3a2d22, 0x6b5a44};

  private PhotographTray() {}

  /** Returns the lens of the bench's camera. */
  static Lens lens() {
    double focal = HEIGHT_MM / MM_PER_PX;
    return new Lens(
        focal, focal, WIDTH_PX / 2.0 + 5, HEIGHT_PX / 2.0 - 4, -0.06, 0.02, 0.0003, 0, 0);
  }

  /** Takes a photo, unless it lies there. */
  static byte[] take(TrayPlan plan, int day, Path folder) throws IOException {
    Path file = folder.resolve(plan.name() + "-seed" + plan.seed() + "-day" + day + ".jpg");
    if (!Files.exists(file)) {
      Random random = new Random(plan.seed() * 31 + day);
      Shot shot = shot(random);
      Light light = light(random);
      List<Sown> sown = SowTray.grown(SowTray.cells(plan), day + TrayPlan.PHOTO_TIME);
      Scene scene = scene(plan, sown);
      PictureFiles.writeJpeg(
          Develop.develop(RenderPhoto.render(scene, camera(random), light), shot),
          file,
          shot.finish().jpegQuality());
    }
    return Files.readAllBytes(file);
  }

  private static Scene scene(TrayPlan plan, List<Sown> sown) {
    Random random = new Random(plan.seed() + 7);
    BoardLook look =
        new BoardLook(
            Tint.srgb(TRAYS[random.nextInt(TRAYS.length)]),
            0.15,
            0,
            0.1,
            Medium.of(Tint.srgb(PLUGS[random.nextInt(PLUGS.length)])),
            false,
            random.nextInt(1 << 20));
    Raft tray = new Raft(plan.name(), plan.layout(), Placement.NONE, look, sown, 1);
    // A tray stands on a bench: no water in view.
    Pond bench =
        new Pond(
            new Box(-9000, -9000, -8000, -8000),
            Tint.srgb(0x1b2420),
            Tint.srgb(0x8b877f),
            30,
            random.nextInt(1 << 20));
    return new Scene(List.of(tray), List.of(), bench, new Mesh());
  }

  private static Camera camera(Random random) {
    Hold hold =
        new Hold(
            180 + 4 * random.nextGaussian(),
            350 + 4 * random.nextGaussian(),
            HEIGHT_MM * (1 + 0.002 * random.nextGaussian()),
            0.02 * random.nextGaussian(),
            0.006 * random.nextGaussian(),
            0.006 * random.nextGaussian());
    return new Camera(lens(), WIDTH_PX, HEIGHT_PX, hold);
  }

  private static Light light(Random random) {
    double day = 0.35 * random.nextDouble();
    Light.Field field =
        new Light.Field(
            0,
            0.2 * random.nextGaussian(),
            0.2 * random.nextGaussian(),
            0,
            random.nextInt(1 << 20));
    return new Light(
        new Tint(1, 1, 1).times(1 - day),
        new Tint(1.05, 1, 0.9).times(day),
        0.4 * random.nextGaussian(),
        0.4 * random.nextGaussian(),
        0.1,
        field);
  }

  private static Shot shot(Random random) {
    double exposure = 0.85 * Math.exp(0.08 * random.nextGaussian());
    Tint balance = new Tint(1 + 0.03 * random.nextGaussian(), 1, 1 + 0.03 * random.nextGaussian());
    return new Shot(
        balance.times(exposure),
        new Shot.Optics(0.4 + 0.3 * random.nextDouble(), 0, 0.1, 0.005),
        new Shot.Noise(0.0002, 0.0012),
        new Shot.Finish(0.1, 0.3, 88),
        random.nextInt(1 << 30) + 1L);
  }
}
