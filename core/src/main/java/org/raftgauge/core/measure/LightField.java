// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.raftgauge.core.canopy.EvenedLight;
import org.raftgauge.core.canopy.LightSource;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * The light over a photo, as white boards show it: {@code ln L = c + a x + d y + v (x^2 + y^2)}, x
 * and y from the middle of the picture over half its width, fitted by least squares to the lights
 * that the boards were evened by. A lamp that is out tilts it; a lens or its hood changes v.
 *
 * @param level of a white board, linear, 0..1
 * @param acrossLn ln of the light at the picture's right edge over that at its left
 * @param downLn the same over one picture width downward
 * @param vignettingFraction share of the middle's light that a place half a picture width off has
 *     lost; negative where it is brighter
 */
public record LightField(
    double level, double acrossLn, double downLn, double vignettingFraction) {
  /** Places a board and direction. */
  private static final int PLACES = 7;

  /** A field from boards over less of the picture, in half widths, tells no curve. */
  private static final double LEAST_SPAN = 0.5;

  /**
   * Fits the light.
   *
   * @param boards boards whose light is known
   * @param widthPx width of the photo
   * @param heightPx its height
   * @return the field; nothing where no bright board shows
   */
  static Optional<LightField> of(List<MeasureBoard.Lit> boards, int widthPx, int heightPx) {
    List<double[]> places = new ArrayList<>();
    for (MeasureBoard.Lit lit : boards) {
      // A light that two boards share is lent: of one of them it is not its own.
      boolean own = boards.stream().filter(b -> b.light() == lit.light()).count() == 1;
      if (own && lit.light().source() == LightSource.BOARD && lit.light().boardIsBright()) {
        add(lit, widthPx, heightPx, places);
      }
    }
    double span =
        places.stream().mapToDouble(p -> p[1]).max().orElse(0)
            - places.stream().mapToDouble(p -> p[1]).min().orElse(0);
    return span < LEAST_SPAN ? Optional.empty() : Optional.of(fit(places));
  }

  private static void add(
      MeasureBoard.Lit lit, int widthPx, int heightPx, List<double[]> places) {
    DeckImage deck = lit.deck();
    EvenedLight light = lit.light();
    int w = deck.image().width();
    int h = deck.image().height();
    double margin = deck.marginMm() / deck.mmPerPx();
    List<double[]> own = new ArrayList<>();
    for (int i = 0; i < PLACES * PLACES; i++) {
      double x = margin + (w - 2 * margin) * (i % PLACES + 0.5) / PLACES;
      double y = margin + (h - 2 * margin) * (Math.floorDiv(i, PLACES) + 0.5) / PLACES;
      PointPx at = lit.board().pose().toPhoto(deck.toMm(new PointPx(x, y)));
      double u = (at.xPx() - widthPx / 2.0) / (widthPx / 2.0);
      double v = (at.yPx() - heightPx / 2.0) / (widthPx / 2.0);
      double ln = -Math.log(light.gainsAt((int) x, (int) y, w, h)[1]);
      own.add(new double[] {1, u, v, u * u + v * v, ln});
    }
    // A board too dim to fit a surface to has one strength all over: it says nothing of the light.
    if (own.stream().anyMatch(p -> p[4] != own.get(0)[4])) {
      places.addAll(own);
    }
  }

  private static LightField fit(List<double[]> places) {
    RealMatrix a = MatrixUtils.createRealMatrix(4, 4);
    double[] b = new double[4];
    for (double[] p : places) {
      for (int i = 0; i < 4; i++) {
        for (int j = 0; j < 4; j++) {
          a.addToEntry(i, j, p[i] * p[j]);
        }
        b[i] += p[i] * p[4];
      }
    }
    double[] c =
        new LUDecomposition(a, 1e-12).getSolver().solve(new ArrayRealVector(b)).toArray();
    return new LightField(
        Math.exp(c[0] + c[3] / 3), 2 * c[1], 2 * c[2], 1 - Math.exp(c[3]));
  }
}
