// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.geom.Point2D;
import java.util.List;
import java.util.stream.Stream;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * How large a photo is drawn.
 *
 * @param factor overlay px per photo px, above 0
 * @param width of the drawn photo, px
 * @param height of the drawn photo, px
 */
record Scale(double factor, int width, int height) {
  private static final double LONGEST_PX = 2000;
  private static final double LARGEST_PX = 4000;
  private static final double SMALLEST_PX = 1200;

  /** Under this distance between sites their names and areas cannot be read. */
  private static final double READABLE_PITCH_PX = 120;

  /**
   * Chooses a scale: the longest side 2000 px, or the photo's own size where it is smaller, but at
   * least 1200; where sites lie close, larger, to 4000.
   */
  static Scale of(RgbImage photo, List<PhotoResult.RaftDrawing> drawings) {
    double longest = Math.max(photo.width(), photo.height());
    double pitch = pitchPx(drawings);
    double usual = Math.max(Math.min(LONGEST_PX, longest), SMALLEST_PX);
    double target = Math.min(Math.max(usual, READABLE_PITCH_PX / pitch * longest), LARGEST_PX);
    double factor = target / longest;
    return new Scale(
        factor,
        (int) Math.max(1, Math.round(photo.width() * factor)),
        (int) Math.max(1, Math.round(photo.height() * factor)));
  }

  /** Returns the smallest distance between two sites of a raft, photo px; large without sites. */
  static double pitchPx(List<PhotoResult.RaftDrawing> drawings) {
    return drawings.stream()
        .flatMap(d -> distances(d.siteCentresPx()))
        .mapToDouble(d -> d)
        .min()
        .orElse(LARGEST_PX);
  }

  private static Stream<Double> distances(List<PointPx> centres) {
    return centres.stream()
        .flatMap(
            a ->
                centres.stream()
                    .map(a::distancePx)
                    .filter(d -> d > 0)
                    .min(Double::compare)
                    .stream());
  }

  /** Returns where a place of the photo is drawn; integer photo coordinates are pixel centres. */
  Point2D.Double at(PointPx point) {
    return at(point.xPx(), point.yPx());
  }

  /** Returns where a place of the photo is drawn, in Java's frame: 0, 0 is the corner. */
  Point2D.Double at(double xPx, double yPx) {
    return new Point2D.Double((xPx + 0.5) * factor, (yPx + 0.5) * factor);
  }
}
