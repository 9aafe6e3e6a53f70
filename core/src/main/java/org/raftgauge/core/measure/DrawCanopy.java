// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.CameraPose;

/** Takes each board's canopy and heights from its deck picture back to the photo's own pixels. */
final class DrawCanopy {
  /** Exact places every so many px, linear between. */
  private static final int MESH = 8;

  private final RgbImage image;
  private final byte[] coverage;
  private final short[] owner;
  private final float[] heightsMm;

  private DrawCanopy(RgbImage image, boolean withHeights) {
    this.image = image;
    this.heightsMm = new float[withHeights ? image.width() * image.height() : 0];
    Arrays.fill(heightsMm, Float.NaN);
    this.coverage = new byte[image.width() * image.height()];
    this.owner = new short[image.width() * image.height()];
  }

  /** What was drawn: canopy, and heights where a second camera saw any. */
  record Drawn(CanopyMap canopy, Optional<HeightPicture> heights) {}

  static Drawn inPhoto(RgbImage image, List<MeasureBoard.Outcome> outcomes) {
    boolean high =
        outcomes.stream()
            .flatMap(o -> o.painting().stream())
            .anyMatch(p -> p.heights().isPresent());
    DrawCanopy draw = new DrawCanopy(image, high);
    for (int raft = 0; raft < outcomes.size(); raft++) {
      MeasureBoard.Outcome outcome = outcomes.get(raft);
      int number = raft;
      outcome.painting().ifPresent(p -> draw.paint(p, 1024 * number));
    }
    return new Drawn(
        new CanopyMap(image.width(), image.height(), draw.coverage, draw.owner),
        high
            ? Optional.of(new HeightPicture(image.width(), image.height(), draw.heightsMm))
            : Optional.empty());
  }

  private void paint(MeasureBoard.Painting painting, int base) {
    int[] box = box(painting);
    for (int y0 = box[1]; y0 <= box[3]; y0 += MESH) {
      for (int x0 = box[0]; x0 <= box[2]; x0 += MESH) {
        paintTile(painting, base, x0, y0);
      }
    }
  }

  /** Bounds of the deck picture in the photo. */
  private int[] box(MeasureBoard.Painting painting) {
    int[] box = {image.width() - 1, image.height() - 1, 0, 0};
    int w = painting.deck().image().width();
    int h = painting.deck().image().height();
    for (int k = 0; k <= 16; k++) {
      double f = k / 16.0;
      PointPx[] rim = {
        new PointPx(f * w, 0), new PointPx(f * w, h), new PointPx(0, f * h), new PointPx(w, f * h)
      };
      for (PointPx p : rim) {
        PointPx at = painting.board().pose().toPhoto(painting.deck().toMm(p));
        box[0] = Math.min(box[0], (int) Math.max(0, at.xPx()));
        box[1] = Math.min(box[1], (int) Math.max(0, at.yPx()));
        box[2] = Math.max(box[2], (int) Math.min(image.width() - 1.0, at.xPx() + 1));
        box[3] = Math.max(box[3], (int) Math.min(image.height() - 1.0, at.yPx() + 1));
      }
    }
    return box;
  }

  private void paintTile(MeasureBoard.Painting painting, int base, int x0, int y0) {
    CameraPose pose = painting.board().pose();
    PointMm a = pose.toDeck(new PointPx(x0, y0));
    PointMm b = pose.toDeck(new PointPx(x0 + MESH, y0));
    PointMm c = pose.toDeck(new PointPx(x0, y0 + MESH));
    PointMm d = pose.toDeck(new PointPx(x0 + MESH, y0 + MESH));
    for (int y = y0; y < Math.min(y0 + MESH, image.height()); y++) {
      double fy = (double) (y - y0) / MESH;
      for (int x = x0; x < Math.min(x0 + MESH, image.width()); x++) {
        double fx = (double) (x - x0) / MESH;
        double xMm =
            (1 - fy) * ((1 - fx) * a.xMm() + fx * b.xMm())
                + fy * ((1 - fx) * c.xMm() + fx * d.xMm());
        double yMm =
            (1 - fy) * ((1 - fx) * a.yMm() + fx * b.yMm())
                + fy * ((1 - fx) * c.yMm() + fx * d.yMm());
        paintPixel(painting, base, y * image.width() + x, new PointMm(xMm, yMm));
      }
    }
  }

  private void paintPixel(MeasureBoard.Painting painting, int base, int at, PointMm place) {
    PointPx p = painting.deck().toPx(place);
    int x = (int) Math.round(p.xPx());
    int y = (int) Math.round(p.yPx());
    int width = painting.canopy().width();
    if (x < 0 || y < 0 || x >= width || y >= painting.canopy().height()) {
      return;
    }
    int i = y * width + x;
    int value = painting.canopy().coverage()[i] & 0xff;
    if (value > (coverage[at] & 0xff)) {
      coverage[at] = (byte) value;
    }
    painting
        .heights()
        .filter(map -> map.seen(i))
        .ifPresent(map -> heightsMm[at] = (float) map.mm(i));
    short site = painting.sites().owner()[i];
    if (site >= 0 && value >= 128) {
      owner[at] = (short) (base + 1 + site);
    }
  }
}
