// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.opencv.MatchRows;
import org.raftgauge.core.pixels.GreyImage;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Warp;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.Distortion;

/** Both photos of a pair redrawn so that a thing lies in the same row of both. */
final class RectifiedPair {
  /** Shrink past which photo pixels are averaged, as in {@code RectifyDeck}. */
  private static final double AVERAGE_FROM = 1.3;

  /** Exact places every so many px, linear between. */
  private static final int MESH = 8;

  /** Fewer corners than this say nothing of rows. */
  private static final int FEWEST_CORNERS = 25;

  private final PairGeometry geometry;
  private final GreyImage left;
  private final GreyImage right;

  private RectifiedPair(PairGeometry geometry, GreyImage left, GreyImage right) {
    this.geometry = geometry;
    this.left = left;
    this.right = right;
  }

  /**
   * Redraws.
   *
   * @param first the first camera's photo
   * @param pose of the first camera
   * @param second the second camera's picture, a photo
   * @param geometry how
   */
  static RectifiedPair of(
      RgbImage first, CameraPose pose, SecondPicture second, PairGeometry geometry) {
    View left = new View(pose.lens(), geometry.toFirst(), 0, 0);
    View right = right(second, geometry, 0);
    return new RectifiedPair(
        geometry, draw(first, left, geometry), draw(second.photo().orElseThrow(), right, geometry));
  }

  /** Redraws the second photo with its rows moved. */
  RectifiedPair moved(SecondPicture second, double rowsPx) {
    GreyImage again = draw(second.photo().orElseThrow(), right(second, geometry, rowsPx), geometry);
    return new RectifiedPair(geometry, left, again);
  }

  private static View right(SecondPicture second, PairGeometry geometry, double rowsPx) {
    return new View(second.lens(), geometry.toSecond(second), geometry.movedPx(), rowsPx);
  }

  /** A camera, and by how many px its picture is moved against the rectified lens. */
  private static final class View {
    private final Lens lens;
    private final double[] toCamera;
    private final double rightPx;
    private final double downPx;

    private View(Lens lens, double[] toCamera, double rightPx, double downPx) {
      this.lens = lens;
      this.toCamera = toCamera;
      this.rightPx = rightPx;
      this.downPx = downPx;
    }
  }

  private static GreyImage draw(RgbImage photo, View view, PairGeometry geometry) {
    double shrink = view.lens.fxPx() / geometry.lens().fxPx();
    int parts = shrink > AVERAGE_FROM ? (int) Math.ceil(shrink) : 1;
    return GreyImage.of(Warp.redraw(photo, new Places(view, geometry, parts), parts));
  }

  /** Where the (finely divided) pixels of a rectified picture lie in its photo. */
  private record Places(View view, PairGeometry geometry, int parts) implements Warp.Sources {

    @Override
    public int width() {
      return geometry.width() * parts;
    }

    @Override
    public int height() {
      return geometry.height() * parts;
    }

    @Override
    public void row(int y, float[] xPx, float[] yPx) {
      PointPx from = source(view, geometry, -0.5 + 0.5 / parts, (y + 0.5) / parts - 0.5);
      for (int x0 = 0; x0 < xPx.length; x0 += MESH) {
        PointPx to =
            source(view, geometry, (x0 + MESH + 0.5) / parts - 0.5, (y + 0.5) / parts - 0.5);
        for (int x = x0; x < Math.min(x0 + MESH, xPx.length); x++) {
          double share = (double) (x - x0) / MESH;
          xPx[x] = (float) ((1 - share) * from.xPx() + share * to.xPx());
          yPx[x] = (float) ((1 - share) * from.yPx() + share * to.yPx());
        }
        from = to;
      }
    }
  }

  private static PointPx source(View view, PairGeometry geometry, double x, double y) {
    Lens lens = geometry.lens();
    double[] ray = {
      (x - view.rightPx - lens.cxPx()) / lens.fxPx(),
      (y + view.downPx - lens.cyPx()) / lens.fyPx(),
      1
    };
    double[] at = PairGeometry.turned(view.toCamera, ray);
    return Distortion.toPhoto(view.lens, at[0] / at[2], at[1] / at[2]);
  }

  /** Returns the left picture. */
  GreyImage left() {
    return left;
  }

  /**
   * Returns by how many px things lie lower in the second picture than in the first: the median
   * over corners found in both; nothing where too few are.
   */
  OptionalDouble rowErrorPx() {
    List<MatchRows.Match> corners =
        MatchRows.corners(left, right).stream().filter(this::inRange).toList();
    double[] rows =
        corners.stream().mapToDouble(m -> m.right().yPx() - m.left().yPx()).sorted().toArray();
    return rows.length < FEWEST_CORNERS
        ? OptionalDouble.empty()
        : OptionalDouble.of(rows[rows.length / 2]);
  }

  private boolean inRange(MatchRows.Match match) {
    double disparity = match.left().xPx() - match.right().xPx();
    MatchRows.Range range = geometry.range();
    return disparity >= range.least() && disparity < range.least() + range.count();
  }

  /** Returns the depth that each pixel of the left picture shows, NaN where none was found. */
  float[] depthsMm() {
    float[] depths = MatchRows.disparities(left, EvenPair.asBright(right, left), geometry.range());
    for (int i = 0; i < depths.length; i++) {
      depths[i] = Float.isNaN(depths[i]) ? Float.NaN : (float) geometry.depthMm(depths[i]);
    }
    return blankRim(depths);
  }

  /** Takes the answers where a picture does not show the place at all. */
  private float[] blankRim(float[] depths) {
    byte[] levels = left.levels();
    for (int i = 0; i < depths.length; i++) {
      depths[i] = levels[i] == 0 ? Float.NaN : depths[i];
    }
    return depths;
  }
}
