// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.solid.Placement;

/**
 * A station of the proving sets.
 *
 * @param name as the book names it
 * @param fixed true: slots and no markers
 * @param lens for photos of the given size
 * @param widthPx px
 * @param heightPx px
 * @param hold the usual place of the camera over the world of the photo
 * @param places where the measured boards lie
 */
record StationPlan(
    String name,
    boolean fixed,
    Lens lens,
    int widthPx,
    int heightPx,
    Hold hold,
    List<Placement> places) {

  /** Makes a passing station whose photos show 1, 2 or 4 boards of 600 x 1200 mm. */
  static StationPlan passing(int rafts, double megapixels) {
    double columns = rafts == 1 ? 1 : 2;
    double rows = rafts == 4 ? 2 : 1;
    double wide = 640 * columns + 230;
    double high = 1240 * rows + 230;
    double scale = Math.sqrt(megapixels * 1e6 / (wide * high));
    double height = rafts == 1 ? 1600 : rafts == 2 ? 1900 : 3000;
    List<Placement> places = new ArrayList<>();
    for (int i = 0; i < rafts; i++) {
      places.add(new Placement(i % 2 == 1 ? 640 : 0, i >= 2 ? 1240 : 0, 0));
    }
    String name = rafts == 1 ? "photo-bench" : "photo-bench-" + rafts;
    Hold hold = new Hold(320 * columns - 20, 620 * rows - 20, height, 0, 0, 0);
    return new StationPlan(
        name,
        false,
        lens(scale * height, wide * scale, high * scale),
        (int) Math.round(wide * scale),
        (int) Math.round(high * scale),
        hold,
        places);
  }

  /** Makes a fixed station over three boards of 500 x 1000 mm. */
  static StationPlan fixed(double megapixels) {
    double wide = 1760;
    double high = 1160;
    double scale = Math.sqrt(megapixels * 1e6 / (wide * high));
    List<Placement> places =
        List.of(
            new Placement(0, 0, 0), new Placement(528, 7, 0.008), new Placement(1052, -5, -0.006));
    Hold hold = new Hold(790, 490, 2400, 0.011, 0.012, -0.017);
    return new StationPlan(
        "pond-cam",
        true,
        lens(scale * 2400, wide * scale, high * scale),
        (int) Math.round(wide * scale),
        (int) Math.round(high * scale),
        hold,
        places);
  }

  private static Lens lens(double focalPx, double wide, double high) {
    return new Lens(
        focalPx,
        focalPx,
        wide / 2 + 0.004 * wide,
        high / 2 - 0.003 * high,
        -0.09,
        0.025,
        0.0004,
        -0.0003,
        0);
  }

  /** Returns the camera in its usual place. */
  Camera camera() {
    return new Camera(lens, widthPx, heightPx, hold);
  }

  /** Draws the camera's place for one photo: a passing raft lies anyhow, a fixed camera shakes. */
  Camera camera(double tiltDeg, Random random) {
    double shake = fixed ? 0 : 1;
    double half = !fixed && random.nextInt(4) == 0 ? Math.PI : 0;
    double tilt = fixed ? 0 : Math.toRadians(tiltDeg);
    double tiltTo = random.nextDouble() * 2 * Math.PI;
    double jitter = 1.2 * 2400 / lens.fxPx();
    Hold held =
        new Hold(
            hold.xMm() + (fixed ? jitter * random.nextGaussian() : 8 * random.nextGaussian()),
            hold.yMm() + (fixed ? jitter * random.nextGaussian() : 8 * random.nextGaussian()),
            hold.heightMm() * (1 + shake * 0.002 * random.nextGaussian()),
            hold.turnRad() + half + (fixed ? 0.0004 : 0.03) * random.nextGaussian(),
            hold.tiltXRad() + tilt * Math.cos(tiltTo),
            hold.tiltYRad() + tilt * Math.sin(tiltTo));
    return new Camera(lens, widthPx, heightPx, aimed(held));
  }

  /** Moves a tilted camera back so that the boards stay in the picture. */
  private Hold aimed(Hold held) {
    if (fixed) {
      return held;
    }
    double[] middle =
        new Camera(lens, widthPx, heightPx, held).planePoint(widthPx / 2.0, heightPx / 2.0, 0);
    return new Hold(
        2 * held.xMm() - middle[0],
        2 * held.yMm() - middle[1],
        held.heightMm(),
        held.turnRad(),
        held.tiltXRad(),
        held.tiltYRad());
  }

  /** Returns the board that lies here. */
  Layout layout(int photo) {
    return fixed ? Boards.POND_18 : photo % 3 == 2 ? Boards.DECK_28 : Boards.DECK_18;
  }
}
