// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.Random;
import org.raftgauge.proving.render.Shot;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.scene.Medium;
import org.raftgauge.proving.solid.Tint;

/** Draws the look of a photo under a condition. Strengths are chosen by eye, without a source. */
final class Looks {
  private static final int[] PLUGS = {0x2b2724, 0x4a3526, 0x6b6a66, 0x3d4a36};

  private Looks() {}

  /** Draws a look. */
  static Look draw(Condition condition, Random random) {
    return new Look(
        board(condition, random),
        light(condition, random),
        shot(condition, random),
        condition == Condition.CLUTTER ? 6 : random.nextInt(4) == 0 ? 1 : 0,
        condition == Condition.TILT ? 4 + 0.8 * random.nextDouble() : 1.6 * random.nextDouble());
  }

  private static double between(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private static BoardLook board(Condition condition, Random random) {
    int rgb =
        switch (condition) {
          case DARK_BOARD -> random.nextBoolean() ? 0x26282a : 0x3f4346;
          case GREY_BOARD -> random.nextBoolean() ? 0x8d9093 : 0xa8a59c;
          case ALGAE -> random.nextInt(3) == 0 ? 0xb9b7ac : 0xd9d6ca;
          default -> random.nextInt(3) == 0 ? 0xe4e2da : 0xeeeeec;
        };
    double stain = condition == Condition.ALGAE ? 0.9 : between(random, 0, 0.35);
    double algae = condition == Condition.ALGAE ? between(random, 0.45, 0.95) : 0;
    double gloss = condition == Condition.GLARE ? 0.8 : 0.15;
    return new BoardLook(
        Tint.srgb(rgb),
        stain,
        algae,
        gloss,
        Medium.of(Tint.srgb(PLUGS[random.nextInt(PLUGS.length)])),
        random.nextBoolean(),
        random.nextInt(1 << 20));
  }

  private static Light light(Condition condition, Random random) {
    boolean sun =
        switch (condition) {
          case SUN, PATCHES, BRIGHT, GLARE -> true;
          case PLAIN, UNEVEN, RED, TILT, CLUTTER, EMPTY, FULL -> random.nextInt(3) == 0;
          default -> false;
        };
    double share =
        !sun
            ? 0
            : switch (condition) {
              case SUN, PATCHES -> between(random, 0.60, 0.75);
              case GLARE -> 0.3;
              default -> between(random, 0.25, 0.5);
            };
    double slant = between(random, 0.25, 0.9);
    double to = between(random, 0, 2 * Math.PI);
    double soft = condition == Condition.SUN || condition == Condition.PATCHES ? 0.012 : 0.10;
    double slope = condition == Condition.UNEVEN ? 0.75 : 0.10;
    Light.Field field =
        new Light.Field(
            condition == Condition.PATCHES ? 0.97 : 0,
            between(random, -slope, slope),
            between(random, -slope, slope),
            condition == Condition.GLARE ? 0.55 : 0,
            random.nextInt(1 << 20));
    Tint white = new Tint(1, 1, 1);
    Tint warm = new Tint(1.05, 1, 0.90);
    Tint blue = new Tint(0.95, 1, 1.07);
    double height = Math.sqrt(1 + slant * slant);
    return new Light(
        (sun ? blue : white).times(1 - share),
        sun ? warm.times(share * height) : new Tint(0, 0, 0),
        slant * Math.cos(to),
        slant * Math.sin(to),
        soft,
        field);
  }

  private static Shot shot(Condition condition, Random random) {
    double exposure =
        switch (condition) {
          case DIM -> between(random, 0.07, 0.13);
          case BRIGHT -> between(random, 1.6, 2.1);
          case DARK_BOARD -> between(random, 0.95, 1.35);
          default -> between(random, 0.80, 1.02);
        };
    return new Shot(
        balance(condition, random).times(exposure),
        optics(condition, random),
        noise(condition, random),
        finish(condition, random),
        random.nextInt(1 << 30) + 1L);
  }

  private static Tint balance(Condition condition, Random random) {
    return switch (condition) {
      case TINTED -> random.nextBoolean() ? new Tint(1.22, 0.95, 0.52) : new Tint(0.72, 0.98, 1.15);
      case PURPLE_LAMP -> new Tint(1.0, 0.06 + 0.05 * random.nextDouble(), 0.85);
      default -> new Tint(between(random, 0.96, 1.04), 1, between(random, 0.95, 1.05));
    };
  }

  private static Shot.Optics optics(Condition condition, Random random) {
    return switch (condition) {
      case HAZE -> new Shot.Optics(between(random, 0.9, 1.5), 0, 0.2, between(random, 0.15, 0.3));
      case UNEVEN -> new Shot.Optics(0.5, 0, between(random, 0.35, 0.5), 0);
      case DIM -> new Shot.Optics(0.5, between(random, 1, 3), 0.15, 0);
      case GLARE -> new Shot.Optics(0.5, 0, 0.1, 0.05);
      default -> new Shot.Optics(between(random, 0.35, 0.6), 0, between(random, 0.03, 0.18), 0);
    };
  }

  private static Shot.Noise noise(Condition condition, Random random) {
    return switch (condition) {
      case DIM -> new Shot.Noise(0.0012, 0.0035);
      case GLARE -> new Shot.Noise(0.0016, 0.004);
      default -> new Shot.Noise(between(random, 0.00003, 0.0003), 0.0012);
    };
  }

  private static Shot.Finish finish(Condition condition, Random random) {
    double contrast = condition == Condition.BRIGHT ? 0.6 : between(random, 0, 0.3);
    double sharpen = condition == Condition.HAZE ? 0 : between(random, 0, 0.6);
    int quality = condition == Condition.HAZE ? 60 : 78 + random.nextInt(18);
    return new Shot.Finish(contrast, sharpen, quality);
  }
}
