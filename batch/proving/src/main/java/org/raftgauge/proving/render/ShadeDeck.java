// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Face;
import org.raftgauge.proving.scene.Medium;
import org.raftgauge.proving.scene.Pond;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Noise;
import org.raftgauge.proving.solid.Tint;

/** Colours a point of the deck plane, or of what shows below it. */
final class ShadeDeck {
  private static final Tint INK = new Tint(0.022, 0.022, 0.024);
  private static final Tint PAPER = new Tint(0.80, 0.80, 0.79);
  private static final Tint RIM = new Tint(0.018, 0.018, 0.018);
  private static final Tint STAIN = new Tint(0.42, 0.33, 0.20);
  private static final Tint ALGAE = new Tint(0.15, 0.20, 0.05);

  private final Scene scene;
  private final Lighting lighting;
  private final double[] foot;
  private final Shine shine = new Shine();

  /** Takes the camera's foot point and height, mm. */
  ShadeDeck(Scene scene, Lighting lighting, double[] foot) {
    this.scene = scene;
    this.lighting = lighting;
    this.foot = foot.clone();
  }

  /** Writes the light that leaves the point, linear r g b, to {@code rgb}. */
  void shade(int code, double x, double y, double[] rgb) {
    Face face = Face.of(code);
    if (face == Face.OPEN || face == Face.HOLE) {
      below(x, y, rgb);
      return;
    }
    lighting.onDeck(x, y, 0, shine);
    Tint colour = colour(face, Face.index(code), x, y);
    double gloss = face == Face.BOARD ? scene.rafts().get(Face.index(code)).look().gloss() : 0.3;
    write(rgb, colour, shine.mirrored * gloss);
  }

  private void write(double[] rgb, Tint colour, double mirrored) {
    rgb[0] = colour.r() * shine.r + mirrored;
    rgb[1] = colour.g() * shine.g + mirrored;
    rgb[2] = colour.b() * shine.b + mirrored;
  }

  private Tint colour(Face face, int index, double x, double y) {
    return switch (face) {
      case INK -> INK;
      case PAPER -> PAPER.times(0.96 + 0.06 * Noise.at(x / 9, y / 9, 77));
      case RIM -> RIM;
      case SLIP -> scene.slips().get(index).colour();
      case PLUG -> plug(scene.rafts().get(index).look(), x, y);
      case COLLAR -> scene.rafts().get(index).look().medium().collar();
      case BOARD -> board(scene.rafts().get(index), x, y);
      case OPEN, HOLE -> INK;
    };
  }

  private static Tint plug(BoardLook look, double x, double y) {
    double grain = Noise.octaves(x / 2.2, y / 2.2, 3, look.seed() + 3);
    Medium medium = look.medium();
    Tint colour = medium.core().times(0.55 + 0.9 * grain);
    if (medium.moss().share() > 0) {
      // Values of the noise lie about 0.5 and rarely past 0.3 and 0.7.
      double at = 0.7 - 0.4 * medium.moss().share();
      double patch = Noise.octaves(x / 45, y / 45, 4, look.seed() + 6);
      Tint moss =
          medium.moss().colour().times(0.6 + 0.8 * Noise.at(x / 1.6, y / 1.6, look.seed() + 7));
      colour = colour.mix(moss, Noise.step(at - 0.04, at + 0.04, patch));
    }
    return colour;
  }

  private static Tint board(Raft raft, double x, double y) {
    BoardLook look = raft.look();
    int seed = look.seed();
    double grain = Noise.octaves(x / 2.5, y / 2.5, 2, seed);
    Tint colour =
        look.colour().times(0.965 + 0.05 * grain + 0.02 * Noise.at(x / 160, y / 160, seed));
    double blotch = Noise.octaves(x / 95, y / 95, 5, seed + 1);
    double stain = look.stain() * Noise.step(0.48, 0.72, blotch);
    colour = colour.mix(look.colour().times(STAIN).times(1.6), 0.55 * stain);
    double specks = Noise.at(x / 3.1, y / 3.1, seed + 4);
    if (specks > 0.955 - 0.03 * look.stain()) {
      colour = colour.times(0.72);
    }
    if (look.algae() > 0) {
      double film = Noise.octaves(x / 120, y / 120, 5, seed + 2);
      double thick = Noise.step(0.44, 0.62, film) * (0.6 + 0.4 * Noise.at(x / 6, y / 6, seed + 9));
      colour = colour.mix(ALGAE.mix(look.colour(), 0.25), 0.9 * look.algae() * thick);
    }
    return colour;
  }

  /** Follows the ray on below the deck plane: the pond, the bank, or a board's side. */
  private void below(double x, double y, double[] rgb) {
    Pond pond = scene.pond();
    double on = pond.depthMm() / foot[2];
    double wx = x + (x - foot[0]) * on;
    double wy = y + (y - foot[1]) * on;
    int code = scene.faceAt(wx, wy);
    lighting.onDeck(x, y, 0, shine);
    if (Face.of(code) != Face.OPEN && Face.of(code) != Face.HOLE) {
      boolean side = Face.of(scene.faceAt(x, y)) == Face.OPEN;
      Tint wall =
          scene.rafts().get(Face.of(code) == Face.SLIP ? 0 : Face.index(code)).look().colour();
      write(rgb, wall.times(side ? 0.42 : 0.2), 0);
      return;
    }
    Box water = pond.water();
    boolean wet =
        wx > water.xMinMm() && wx < water.xMaxMm() && wy > water.yMinMm() && wy < water.yMaxMm();
    if (wet) {
      water(pond, wx, wy, rgb);
    } else {
      double grain = Noise.octaves(wx / 30, wy / 30, 5, pond.seed() + 1);
      write(rgb, pond.bankColour().times(0.7 + 0.6 * grain), 0);
    }
  }

  private void water(Pond pond, double x, double y, double[] rgb) {
    double ripple = Noise.octaves(x / 70 + 0.5 * Math.sin(y / 60), y / 30, 4, pond.seed());
    double sheen = 0.02 + 0.025 * Noise.step(0.35, 0.9, ripple);
    double murk = 0.8 + 0.5 * Noise.octaves(x / 80, y / 80, 3, pond.seed() + 2);
    write(rgb, pond.waterColour().times(murk), 0);
    rgb[0] += sheen * shine.r;
    rgb[1] += sheen * shine.g;
    rgb[2] += sheen * shine.b;
  }
}
