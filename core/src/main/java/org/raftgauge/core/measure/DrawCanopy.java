// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Takes each board's canopy and heights from its deck picture back to the photo's own pixels. */
final class DrawCanopy {
  /** Exact places every so many px, linear between. */
  private static final int MESH = 8;

  private final RgbImage image;
  private final List<Optional<MeasureBoard.Painting>> boards;

  private DrawCanopy(RgbImage image, List<Optional<MeasureBoard.Painting>> boards) {
    this.image = image;
    this.boards = boards;
  }

  /** Returns a photo's canopy, drawn once it is asked for. */
  static CanopyMap inPhoto(RgbImage image, List<Optional<MeasureBoard.Painting>> boards) {
    DrawCanopy draw = new DrawCanopy(image, boards);
    return CanopyMap.drawn(image.width(), image.height(), draw::canopy);
  }

  /** Draws the heights that a second camera saw, where it saw any. */
  static Optional<HeightPicture> heights(
      RgbImage image, List<Optional<MeasureBoard.Painting>> boards) {
    if (boards.stream().flatMap(Optional::stream).allMatch(p -> p.heights().isEmpty())) {
      return Optional.empty();
    }
    float[] mm = new float[image.width() * image.height()];
    Arrays.fill(mm, Float.NaN);
    DrawCanopy draw = new DrawCanopy(image, boards);
    for (Optional<MeasureBoard.Painting> board : boards) {
      board.ifPresent(
          p ->
              p.heights()
                  .ifPresent(
                      map ->
                          draw.paint(
                              p, (at, i) -> mm[at] = map.seen(i) ? (float) map.mm(i) : mm[at])));
    }
    return Optional.of(new HeightPicture(image.width(), image.height(), mm));
  }

  private CanopyMap.Pixels canopy() {
    byte[] coverage = new byte[image.width() * image.height()];
    short[] owner = new short[coverage.length];
    for (int raft = 0; raft < boards.size(); raft++) {
      int base = 1024 * raft;
      boards.get(raft).ifPresent(p -> paint(p, canopyBrush(p, base, coverage, owner)));
    }
    return new CanopyMap.Pixels(coverage, owner);
  }

  private static Brush canopyBrush(
      MeasureBoard.Painting painting, int base, byte[] coverage, short[] owner) {
    byte[] covered = painting.canopy().coverage();
    short[] sites = painting.sites().owner();
    return (at, i) -> {
      int value = covered[i] & 0xff;
      if (value > (coverage[at] & 0xff)) {
        coverage[at] = (byte) value;
      }
      if (sites[i] >= 0 && value >= 128) {
        owner[at] = (short) (base + 1 + sites[i]);
      }
    };
  }

  /** What is done for a pixel of the photo and the pixel of the deck picture that it shows. */
  private interface Brush {
    void paint(int at, int deckAt);
  }

  private void paint(MeasureBoard.Painting painting, Brush brush) {
    int[] box = box(painting);
    for (int y0 = box[1]; y0 <= box[3]; y0 += MESH) {
      for (int x0 = box[0]; x0 <= box[2]; x0 += MESH) {
        paintTile(painting, brush, x0, y0);
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

  private void paintTile(MeasureBoard.Painting painting, Brush brush, int x0, int y0) {
    PointPx a = onDeck(painting, x0, y0);
    PointPx b = onDeck(painting, x0 + MESH, y0);
    PointPx c = onDeck(painting, x0, y0 + MESH);
    PointPx d = onDeck(painting, x0 + MESH, y0 + MESH);
    int width = painting.canopy().width();
    int height = painting.canopy().height();
    for (int y = y0; y < Math.min(y0 + MESH, image.height()); y++) {
      double fy = (double) (y - y0) / MESH;
      double left = (1 - fy) * a.xPx() + fy * c.xPx() + 0.5;
      double acrossX = ((1 - fy) * b.xPx() + fy * d.xPx() + 0.5 - left) / MESH;
      double top = (1 - fy) * a.yPx() + fy * c.yPx() + 0.5;
      double acrossY = ((1 - fy) * b.yPx() + fy * d.yPx() + 0.5 - top) / MESH;
      for (int x = x0; x < Math.min(x0 + MESH, image.width()); x++) {
        double deckX = left + (x - x0) * acrossX;
        double deckY = top + (x - x0) * acrossY;
        if (deckX >= 0 && deckY >= 0 && deckX < width && deckY < height) {
          int row = (int) deckY;
          brush.paint(y * image.width() + x, row * width + (int) deckX);
        }
      }
    }
  }

  private static PointPx onDeck(MeasureBoard.Painting painting, int x, int y) {
    return painting.deck().toPx(painting.board().pose().toDeck(new PointPx(x, y)));
  }
}
