// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.Lens;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.render.Shot;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.solid.Tint;

/**
 * Camera and light of one evening.
 *
 * @param lens the lens that is on the camera
 * @param hold where the camera hangs
 * @param light the lamps
 * @param optics blur, vignetting and veil
 * @param exposure the camera's gain
 * @param drop where a drop sits on the lens, if one does
 * @param seed of noise
 */
record Night(
    Lens lens,
    Hold hold,
    Light light,
    Shot.Optics optics,
    double exposure,
    Optional<Drop> drop,
    long seed) {

  /** A place in the picture, shares of its width and height. */
  record Drop(double x, double y) {}

  /** Draws an evening as they usually are at a station. */
  static Night usual(PondStation station, Random random) {
    double mmPerPx = station.hold().heightMm() / station.lens().fxPx();
    Hold at = station.hold();
    Hold hold =
        new Hold(
            at.xMm() + 0.5 * mmPerPx * random.nextGaussian(),
            at.yMm() + 0.5 * mmPerPx * random.nextGaussian(),
            at.heightMm() + 3 * random.nextGaussian(),
            at.turnRad() + 0.0002 * random.nextGaussian(),
            at.tiltXRad() + 0.0003 * random.nextGaussian(),
            at.tiltYRad() + 0.0003 * random.nextGaussian());
    Light.Field field =
        new Light.Field(
            0,
            station.slopeX() + 0.015 * random.nextGaussian(),
            station.slopeY() + 0.015 * random.nextGaussian(),
            0,
            random.nextInt(1 << 20));
    double day = 0.08 * random.nextDouble();
    Light light =
        new Light(
            new Tint(1, 1, 1 + 0.5 * day).times(1 - day),
            new Tint(1.05, 1, 0.9).times(day),
            0.4 * random.nextGaussian(),
            0.4 * random.nextGaussian(),
            0.1,
            field);
    Shot.Optics optics =
        new Shot.Optics(
            station.blurPx() + 0.03 * random.nextGaussian(),
            0,
            station.vignetting() + 0.005 * random.nextGaussian(),
            0.005 + 0.005 * random.nextDouble());
    double exposure = 0.85 * Math.exp(0.03 * random.nextGaussian());
    return new Night(
        station.lens(),
        hold,
        light,
        optics,
        exposure,
        Optional.empty(),
        random.nextInt(1 << 30) + 1L);
  }

  /** Returns the evening with a fault; the random numbers say which way it goes. */
  Night with(Fault fault, Random random) {
    double to = 2 * Math.PI * random.nextDouble();
    return switch (fault) {
      case KNOCK_3 -> knocked(3, to);
      case KNOCK_10 -> knocked(10, to);
      case KNOCK_40 -> knocked(40, to);
      case TURN -> held(turned(Math.toRadians(to > Math.PI ? 0.5 : -0.5)));
      case WATER -> held(raised(40));
      case LENS -> changed(longer(lens), light, optics, drop);
      case FOG -> changed(lens, light, new Shot.Optics(1.4, 0, optics.vignetting(), 0.2), drop);
      case DROP ->
          changed(
              lens,
              light,
              optics,
              Optional.of(new Drop(0.2 + 0.6 * random.nextDouble(), to > Math.PI ? 0.25 : 0.75)));
      case LAMP -> changed(lens, dimmer(to), optics, drop);
    };
  }

  private static Lens longer(Lens l) {
    return new Lens(
        1.04 * l.fxPx(), 1.04 * l.fyPx(), l.cxPx() + 6, l.cyPx() - 4, -0.03, 0.01, 0, 0, 0);
  }

  private Light dimmer(double to) {
    Light.Field f = light.field();
    return new Light(
        light.sky().times(0.75),
        light.sun(),
        light.sunDxMm(),
        light.sunDyMm(),
        light.softness(),
        new Light.Field(
            f.patches(),
            f.slopeX() + 0.3 * Math.cos(to),
            f.slopeY() + 0.3 * Math.sin(to),
            f.glare(),
            f.seed()));
  }

  private Night changed(Lens on, Light under, Shot.Optics through, Optional<Drop> wet) {
    return new Night(on, hold, under, through, exposure, wet, seed);
  }

  private Night held(Hold other) {
    return new Night(lens, other, light, optics, exposure, drop, seed);
  }

  /** A camera turned on its mount by so many px of picture. */
  private Night knocked(double px, double to) {
    double tilt = px / lens.fxPx();
    return held(
        new Hold(
            hold.xMm(),
            hold.yMm(),
            hold.heightMm(),
            hold.turnRad(),
            hold.tiltXRad() + tilt * Math.cos(to),
            hold.tiltYRad() + tilt * Math.sin(to)));
  }

  private Hold turned(double rad) {
    return new Hold(
        hold.xMm(),
        hold.yMm(),
        hold.heightMm(),
        hold.turnRad() + rad,
        hold.tiltXRad(),
        hold.tiltYRad());
  }

  private Hold raised(double mm) {
    return new Hold(
        hold.xMm(),
        hold.yMm(),
        hold.heightMm() + mm,
        hold.turnRad(),
        hold.tiltXRad(),
        hold.tiltYRad());
  }

  Camera camera(PondStation station) {
    return new Camera(lens, station.widthPx(), station.heightPx(), hold);
  }

  Shot shot() {
    return new Shot(
        new Tint(1, 1, 1).times(exposure),
        optics,
        new Shot.Noise(0.0002, 0.0012),
        new Shot.Finish(0.1, 0.2, 88),
        seed);
  }
}
