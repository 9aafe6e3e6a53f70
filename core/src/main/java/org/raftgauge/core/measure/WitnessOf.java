// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.CameraShift;
import org.raftgauge.core.plane.EdgeBlur;

/** Reads off a photo what it says of its camera, lens and lamps. */
final class WitnessOf {
  /** So many places each way are looked at: 200 of them are the darkest share. */
  private static final int LOOKS = 200;

  private static final int LEVELS = 1000;

  /** The darkest share of a photo with water, holes or leaf shadows in it. */
  private static final double DARKEST = 0.005;

  private static final double WHITE = 0.95;

  /**
   * Photos of dark boards show no white: there haze is told against this much of full scale, so
   * that what a hole reflects is not taken for a veil (working value: rendered dark boards show
   * 0.06 at their brightest, dim photos of white ones 0.1 and more).
   */
  private static final double LEAST_WHITE = 0.15;

  private WitnessOf() {}

  /** The boards of a photo: how their edges are smeared; the light on each, what came of it. */
  record Boards(
      EdgeBlur blur, List<Optional<MeasureBoard.Lit>> lit, List<MeasureBoard.Outcome> outcomes) {

    /** Returns the lights of boards that canopy hardly shades: a board under leaves is darker. */
    private List<MeasureBoard.Lit> bare() {
      List<MeasureBoard.Lit> bare = new ArrayList<>();
      for (int i = 0; i < lit.size(); i++) {
        if (outcomes.get(i).raft().canopyCover().orElse(1) < LightField.MOST_COVER) {
          lit.get(i).ifPresent(bare::add);
        }
      }
      return bare;
    }

    /** Returns the mean over the boards that told it. */
    private OptionalDouble pairRowsPx() {
      return outcomes.stream().flatMapToDouble(o -> o.rowsPx().stream()).average();
    }
  }

  static PhotoWitness photo(RgbImage image, Boards boards, Optional<CameraShift> shift) {
    return new PhotoWitness(
        shift,
        boards.blur,
        haze(image),
        LightField.of(boards.bare(), image.width(), image.height()),
        boards.pairRowsPx());
  }

  private static OptionalDouble haze(RgbImage image) {
    LinearLight light = LinearLight.of(image);
    int[] histogram = new int[LEVELS];
    int across = Math.min(LOOKS, image.width());
    int down = Math.min(LOOKS, image.height());
    for (int i = 0; i < across * down; i++) {
      double x = (i % across + 0.5) * image.width() / across - 0.5;
      double y = (Math.floorDiv(i, across) + 0.5) * image.height() / down - 0.5;
      histogram[(int) Math.min(LEVELS - 1.0, LEVELS * light.at(x, y))]++;
    }
    double white = quantile(histogram, WHITE * across * down);
    double dark = quantile(histogram, DARKEST * across * down);
    return white <= 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.min(1, dark / Math.max(white, LEAST_WHITE)));
  }

  /** Returns the light under which so many looks lie, linear within a level. */
  private static double quantile(int[] histogram, double looks) {
    double under = 0;
    int level = 0;
    while (level < LEVELS - 1 && under + histogram[level] < looks) {
      under += histogram[level];
      level++;
    }
    double within = histogram[level] == 0 ? 0 : (looks - under) / histogram[level];
    return (level + within) / LEVELS;
  }
}
