// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.measure.CanopyMap;

/**
 * Traces the outline of each site's canopy: along the cracks between pixels, the site on the right
 * hand, holes included; then drawn through the middles of the cracks, a little smoothed.
 */
final class Outlines {
  /** Half of 255: the pixel is canopy rather than not. */
  private static final int CANOPY = 128;

  /** Loops that are drawn shorter than this are specks; drawing them would only add clutter. */
  private static final double SPECK_PX = 8;

  private static final double SPACING_PX = 1.6;

  private final int width;
  private final int height;
  private final byte[] coverage;
  private final short[] owners;
  private final Scale scale;

  Outlines(CanopyMap canopy, Scale scale) {
    this.width = canopy.width();
    this.height = canopy.height();
    this.coverage = canopy.coverage();
    this.owners = canopy.owner();
    this.scale = scale;
  }

  /** Traces every site; keys are the owner numbers of {@link CanopyMap}. */
  Map<Integer, Path2D> trace() {
    Map<Integer, Path2D> outlines = new TreeMap<>();
    boxes().forEach((owner, box) -> outlines.put(owner, outline(owner, box)));
    return outlines;
  }

  private Map<Integer, Box> boxes() {
    Map<Integer, Box> boxes = new TreeMap<>();
    for (int y = 0; y < height; y++) {
      int start = 0;
      for (int x = 1; x <= width; x++) {
        if (x == width || owner(x, y) != owner(start, y)) {
          widen(boxes, start, x - 1, y);
          start = x;
        }
      }
    }
    return boxes;
  }

  private void widen(Map<Integer, Box> boxes, int first, int last, int y) {
    int owner = owner(first, y);
    if (owner > 0) {
      Box box = boxes.getOrDefault(owner, new Box(first, y, first + 1, y + 1));
      boxes.put(owner, box.with(first, y).with(last, y));
    }
  }

  private int owner(int x, int y) {
    int i = y * width + x;
    return (coverage[i] & 0xff) >= CANOPY ? owners[i] & 0xffff : 0;
  }

  private boolean is(int owner, int x, int y) {
    return x >= 0 && y >= 0 && x < width && y < height && owner(x, y) == owner;
  }

  private Path2D outline(int owner, Box box) {
    Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    int across = box.right() - box.left();
    BitSet seen = new BitSet(across * (box.bottom() - box.top()));
    for (int y = box.top(); y < box.bottom(); y++) {
      for (int x = box.left(); x < box.right(); x++) {
        boolean top = is(owner, x, y) && !is(owner, x, y - 1);
        if (top && !seen.get((y - box.top()) * across + x - box.left())) {
          append(path, loop(owner, x, y, seen, box));
        }
      }
    }
    return path;
  }

  /** Follows a loop from the upper left corner of a pixel whose upper neighbour is not the site. */
  private List<Point2D.Double> loop(int owner, int startX, int startY, BitSet seen, Box box) {
    List<Point2D.Double> middles = new ArrayList<>();
    int x = startX;
    int y = startY;
    int dx = 1;
    int dy = 0;
    do {
      if (dx == 1) {
        seen.set((y - box.top()) * (box.right() - box.left()) + x - box.left());
      }
      middles.add(scale.at(x + dx / 2.0 - 0.5, y + dy / 2.0 - 0.5));
      x += dx;
      y += dy;
      // The two pixels ahead of the corner x, y: (x, y) is the pixel below and right of it.
      int aheadX = dx < 0 ? x - 1 : x;
      int aheadY = dy < 0 ? y - 1 : y;
      boolean left = is(owner, dy == 0 ? aheadX : leftOf(x, dy), dx == 0 ? aheadY : aboveOf(y, dx));
      boolean right =
          is(owner, dy == 0 ? aheadX : leftOf(x, -dy), dx == 0 ? aheadY : aboveOf(y, -dx));
      int turnX = dx;
      if (left) {
        dx = dy;
        dy = -turnX;
      } else if (!right) {
        dx = -dy;
        dy = turnX;
      }
    } while (x != startX || y != startY || dx != 1 || dy != 0);
    return middles;
  }

  /** Column of the pixel on the left hand of a walk along y: right of the corner going down. */
  private static int leftOf(int x, int dy) {
    return dy > 0 ? x : x - 1;
  }

  /** Row of the pixel on the left hand of a walk along x: above the corner going right. */
  private static int aboveOf(int y, int dx) {
    return dx > 0 ? y - 1 : y;
  }

  private static void append(Path2D path, List<Point2D.Double> loop) {
    List<Point2D.Double> points = thinned(smoothed(loop));
    if (points.size() < SPECK_PX / SPACING_PX) {
      return;
    }
    path.moveTo(points.get(0).x, points.get(0).y);
    points.subList(1, points.size()).forEach(p -> path.lineTo(p.x, p.y));
    path.closePath();
  }

  /** Replaces each point by the mean of it and its neighbours: takes the stairs out. */
  private static List<Point2D.Double> smoothed(List<Point2D.Double> loop) {
    int n = loop.size();
    List<Point2D.Double> smooth = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      Point2D.Double a = loop.get((i + n - 1) % n);
      Point2D.Double b = loop.get(i);
      Point2D.Double c = loop.get((i + 1) % n);
      smooth.add(new Point2D.Double((a.x + 2 * b.x + c.x) / 4, (a.y + 2 * b.y + c.y) / 4));
    }
    return smooth;
  }

  private static List<Point2D.Double> thinned(List<Point2D.Double> loop) {
    List<Point2D.Double> thin = new ArrayList<>();
    for (Point2D.Double point : loop) {
      if (thin.isEmpty() || point.distance(thin.get(thin.size() - 1)) >= SPACING_PX) {
        thin.add(point);
      }
    }
    return thin;
  }
}
