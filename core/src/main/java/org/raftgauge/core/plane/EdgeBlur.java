// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * How wide edges are smeared in a photo: a witness of focus, fog and dirt that does not change as
 * crops grow.
 *
 * <p>Of the whole photo the edges of boards tell it: a cut across one goes from one level to
 * another; their difference over the steepest slope is {@code sqrt(2 pi)} standard deviations of
 * the Gaussian blur that makes such an edge of a sharp one, and the middle of many cuts is told. Of
 * its parts all that is sharp in them tells it, so that a smear that stays in one part shows.
 *
 * @param blurPx standard deviation of the blur of board edges, px of the photo; absent where too
 *     few show
 * @param cells blur of {@link #CELLS} times {@code CELLS} parts of the picture, row by row from the
 *     upper left; absent where too little is sharp
 */
public record EdgeBlur(OptionalDouble blurPx, List<OptionalDouble> cells) {
  /** Parts across and down: a drop that spoils a fiftieth of a picture fills one of them. */
  public static final int CELLS = 10;

  private static final int CUTS = 48;
  private static final int LEAST_CUTS = 16;

  /** Half length of a cut, px: between boards lie some 25 mm of water. */
  private static final double REACH_PX = 9;

  private static final double STEP_PX = 0.5;

  /** A weaker step, of full scale in linear light, is no board's edge. */
  private static final double LEAST_STEP = 0.06;

  /** Copies the cells. */
  public EdgeBlur {
    cells = List.copyOf(cells);
  }

  /**
   * Measures on the edges of the boards of a photo.
   *
   * @param photo the photo
   * @param boards the boards found in it; held ones are left out
   * @return the blur
   */
  public static EdgeBlur of(RgbImage photo, List<FoundBoard> boards) {
    LinearLight light = LinearLight.of(photo);
    List<Double> all = new ArrayList<>();
    for (FoundBoard board : boards) {
      if (board.held().isEmpty()) {
        for (EdgeCuts.DeckEdge edge : BoardEdges.edges(board.layout().board())) {
          all.addAll(cuts(light, board, edge));
        }
      }
    }
    return new EdgeBlur(median(all), PartBlur.of(photo));
  }

  /** Returns the blur of the cuts across an edge that show it. */
  private static List<Double> cuts(LinearLight light, FoundBoard board, EdgeCuts.DeckEdge edge) {
    List<Double> cuts = new ArrayList<>();
    for (int i = 0; i < CUTS; i++) {
      double part = 0.05 + 0.9 * (i + 0.5) / CUTS;
      PointPx at = board.pose().toPhoto(edge.at(part, 0));
      PointPx out = board.pose().toPhoto(edge.at(part, board.mmPerPx()));
      double length = at.distancePx(out);
      double[] across = {(out.xPx() - at.xPx()) / length, (out.yPx() - at.yPx()) / length};
      boolean inside =
          light.has(at.xPx() + REACH_PX * across[0], at.yPx() + REACH_PX * across[1])
              && light.has(at.xPx() - REACH_PX * across[0], at.yPx() - REACH_PX * across[1]);
      OptionalDouble blur = inside ? blur(profile(light, at, across)) : OptionalDouble.empty();
      blur.ifPresent(cuts::add);
    }
    return cuts;
  }

  /** Reads the light across an edge, the mean of three lines side by side. */
  private static double[] profile(LinearLight light, PointPx at, double[] across) {
    int n = (int) Math.round(2 * REACH_PX / STEP_PX) + 1;
    double[] profile = new double[n];
    for (int i = 0; i < n; i++) {
      double s = -REACH_PX + i * STEP_PX;
      for (int side = -1; side <= 1; side++) {
        double x = at.xPx() + s * across[0] - side * across[1];
        double y = at.yPx() + s * across[1] + side * across[0];
        profile[i] += light.at(x, y) / 3;
      }
    }
    return profile;
  }

  private static OptionalDouble blur(double[] profile) {
    int end = profile.length / 4;
    double in = Arrays.stream(profile, 0, end).average().orElse(0);
    double out = Arrays.stream(profile, profile.length - end, profile.length).average().orElse(0);
    double steepest = 0;
    for (int i = end; i < profile.length - end; i++) {
      double slope = (profile[i + 1] - profile[i - 1]) / (2 * STEP_PX);
      steepest = Math.max(steepest, Math.signum(out - in) * slope);
    }
    double step = Math.abs(out - in);
    return step < LEAST_STEP || steepest <= 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(step / steepest / Math.sqrt(2 * Math.PI));
  }

  private static OptionalDouble median(List<Double> cuts) {
    double[] blurs = cuts.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    int n = blurs.length;
    return n < LEAST_CUTS
        ? OptionalDouble.empty()
        : OptionalDouble.of((blurs[(n - 1) / 2] + blurs[n / 2]) / 2);
  }
}
