// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.raftgauge.core.canopy.LightSource;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * The light over a photo, as white boards show it: {@code ln L = c + a x + d y + v (x^2 + y^2)}, x
 * and y from the middle of the picture over half its width, fitted by least squares to the lights
 * that the boards were evened by; each board has its own c, for boards differ by age and stain. A
 * lamp that is out tilts it; a lens or its hood changes v.
 *
 * @param level of the boards, linear, their median, 0..1
 * @param acrossLn ln of the light at the picture's right edge over that at its left
 * @param downLn the same over one picture width downward
 * @param vignettingFraction share of the middle's light that a place half a picture width off has
 *     lost; negative where it is brighter
 */
public record LightField(double level, double acrossLn, double downLn, double vignettingFraction) {
  /** A board that canopy covers more of is shaded by it. */
  static final double MOST_COVER = 0.3;

  /** Places a board and direction. */
  private static final int PLACES = 7;

  /**
   * Fits the light.
   *
   * @param boards boards whose light is known
   * @param widthPx width of the photo
   * @param heightPx its height
   * @return the field; nothing where no bright board shows
   */
  static Optional<LightField> of(List<MeasureBoard.Lit> boards, int widthPx, int heightPx) {
    List<List<double[]>> seen = new ArrayList<>();
    for (MeasureBoard.Lit lit : boards) {
      // A light that two boards share is lent: of one of them it is not its own.
      boolean own = boards.stream().filter(b -> b.light() == lit.light()).count() == 1;
      if (own && lit.light().source() == LightSource.BOARD && lit.light().boardIsBright()) {
        List<double[]> places = places(lit, widthPx, heightPx);
        // A board too dim to fit a surface to has one strength all over: it tells nothing.
        if (places.stream().anyMatch(p -> p[3] != places.get(0)[3])) {
          seen.add(places);
        }
      }
    }
    return seen.isEmpty() ? Optional.empty() : Optional.of(fit(seen));
  }

  /** Returns x, y, their squares' sum and ln of the light at places of a board. */
  private static List<double[]> places(MeasureBoard.Lit lit, int widthPx, int heightPx) {
    DeckImage deck = lit.deck();
    int w = deck.image().width();
    int h = deck.image().height();
    double margin = deck.marginMm() / deck.mmPerPx();
    List<double[]> places = new ArrayList<>();
    for (int i = 0; i < PLACES * PLACES; i++) {
      double x = margin + (w - 2 * margin) * (i % PLACES + 0.5) / PLACES;
      double y = margin + (h - 2 * margin) * (Math.floorDiv(i, PLACES) + 0.5) / PLACES;
      PointPx at = lit.board().pose().toPhoto(deck.toMm(new PointPx(x, y)));
      double u = (at.xPx() - widthPx / 2.0) / (widthPx / 2.0);
      double v = (at.yPx() - heightPx / 2.0) / (widthPx / 2.0);
      double ln = -Math.log(lit.light().gainsAt((int) x, (int) y, w, h)[1]);
      places.add(new double[] {u, v, u * u + v * v, ln});
    }
    return places;
  }

  private static LightField fit(List<List<double[]>> boards) {
    RealMatrix a = MatrixUtils.createRealMatrix(3, 3);
    double[] b = new double[3];
    double[] levels = new double[boards.size()];
    for (int k = 0; k < levels.length; k++) {
      double[] mean = new double[4];
      boards.get(k).forEach(p -> add(p, 1.0 / (PLACES * PLACES), mean));
      levels[k] = mean[3];
      for (double[] p : boards.get(k)) {
        for (int i = 0; i < 3; i++) {
          for (int j = 0; j < 3; j++) {
            a.addToEntry(i, j, (p[i] - mean[i]) * (p[j] - mean[j]));
          }
          b[i] += (p[i] - mean[i]) * (p[3] - mean[3]);
        }
      }
    }
    double[] c = new LUDecomposition(a, 1e-12).getSolver().solve(new ArrayRealVector(b)).toArray();
    Arrays.sort(levels);
    double level = (levels[(levels.length - 1) / 2] + levels[levels.length / 2]) / 2;
    return new LightField(Math.exp(level), 2 * c[0], 2 * c[1], 1 - Math.exp(c[2]));
  }

  private static void add(double[] what, double share, double[] to) {
    for (int i = 0; i < to.length; i++) {
      to[i] += share * what[i];
    }
  }
}
