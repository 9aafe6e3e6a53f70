// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Srgb;

/**
 * Where a board's hole grid shows, against where a pose puts it: a witness of scale and position
 * beside the board's edges. At each site the middle of what differs from the board (hole, plug or
 * small plant) is taken, and a shift, a turn and a scale are fitted to them robustly.
 *
 * <p>Middles of plants lie beside their holes by a few mm and stand above the deck, so young crops
 * and empty holes tell most; the standard errors come from how well the middles agree.
 *
 * @param shiftXMm how far the grid lies along x from where the pose puts it, mm
 * @param shiftYMm likewise along y, mm
 * @param turnDeg how far it is turned, degrees
 * @param scale its size over that foretold
 * @param shiftErrorMm standard error of either shift, mm
 * @param scaleError standard error of the scale
 * @param sites sites that count
 */
public record HoleGrid(
    double shiftXMm,
    double shiftYMm,
    double turnDeg,
    double scale,
    double shiftErrorMm,
    double scaleError,
    int sites) {
  private static final double CELL_MM = 2.5;

  /** Sites needed for a fit of four numbers with errors that mean something. */
  private static final int LEAST_SITES = 6;

  /** A place differs from the board from this distance in root light on, 0..1, any channel. */
  private static final double DIFFERS = 0.18;

  /** What covers more of a site's cell is a canopy without a middle of its own. */
  private static final double MOST_COVER = 0.55;

  /** A bare hole is darker than that in every channel, root light, 0..1. */
  private static final double DARK = 0.3;

  private static final double LEAST_AREA_MM2 = 150;
  private static final int ROUNDS = 8;

  /** Foliage stands about that far over the deck in young crops, mm; a guess. */
  private static final double PLANT_MM = 15;

  /** Returns how far a site's middle lies from the fitted grid, as a standard deviation, mm. */
  double scatterMm() {
    return shiftErrorMm * Math.sqrt(sites);
  }

  /** A middle seen at a site: the site's place, and by how far it is off, mm. */
  private record Seen(PointMm at, double dx, double dy) {}

  /**
   * Fits the grid.
   *
   * @param photo the photo
   * @param pose the camera over the board
   * @param layout the board's layout
   * @return the fit; nothing where fewer than six sites show something with a middle
   */
  public static Optional<HoleGrid> fit(RgbImage photo, CameraPose pose, Layout layout) {
    List<Seen> seen = new ArrayList<>();
    Shade board = boardLight(photo, pose, layout);
    for (SiteId site : layout.grid().sites()) {
      middle(photo, pose, new Cell(layout.grid(), site, board)).ifPresent(seen::add);
    }
    return seen.size() < LEAST_SITES ? Optional.empty() : Optional.of(fit(seen));
  }

  /** Root light of red, green and blue, 0..1. */
  private record Shade(double red, double green, double blue) {
    double most() {
      return Math.max(red, Math.max(green, blue));
    }

    boolean differs(Shade board) {
      return new Shade(
                  Math.abs(red - board.red),
                  Math.abs(green - board.green),
                  Math.abs(blue - board.blue))
              .most()
          > DIFFERS;
    }
  }

  /** A site with its surroundings. */
  private record Cell(SiteGrid grid, SiteId site, Shade board) {
    double halfMm() {
      return 0.48 * Math.min(grid.pitchXMm(), grid.pitchYMm());
    }
  }

  /** Returns the median root light of places half way between sites. */
  private static Shade boardLight(RgbImage photo, CameraPose pose, Layout layout) {
    SiteGrid grid = layout.grid();
    List<Shade> between = new ArrayList<>();
    for (SiteId site : grid.sites()) {
      PointMm c = grid.centre(site);
      between.add(
          root(
              photo,
              pose.toPhoto(c.xMm() + grid.pitchXMm() / 2, c.yMm() + grid.pitchYMm() / 2, 0)));
    }
    return new Shade(
        median(between.stream().mapToDouble(Shade::red).toArray()),
        median(between.stream().mapToDouble(Shade::green).toArray()),
        median(between.stream().mapToDouble(Shade::blue).toArray()));
  }

  private static Optional<Seen> middle(RgbImage photo, CameraPose pose, Cell cell) {
    PointMm centre = cell.grid().centre(cell.site());
    double half = cell.halfMm();
    double sum = 0;
    double sx = 0;
    double sy = 0;
    double all = 0;
    double dark = 0;
    for (double y = -half; y <= half; y += CELL_MM) {
      for (double x = -half; x <= half; x += CELL_MM) {
        if (Math.hypot(x, y) > half) {
          continue;
        }
        all++;
        Shade at = root(photo, pose.toPhoto(centre.xMm() + x, centre.yMm() + y, 0));
        if (at.differs(cell.board())) {
          sum++;
          sx += x;
          sy += y;
          dark += at.most() < DARK ? 1 : 0;
        }
      }
    }
    if (sum * CELL_MM * CELL_MM < LEAST_AREA_MM2 || sum > MOST_COVER * all) {
      return Optional.empty();
    }
    // What stands above the deck is shifted away from the foot point; undone for a young plant, but
    // not for a bare hole.
    PointMm foot = pose.foot();
    double lift = dark > 0.5 * sum ? 0 : pose.magnification(PLANT_MM) - 1;
    double dx = sx / sum - lift * (centre.xMm() - foot.xMm());
    double dy = sy / sum - lift * (centre.yMm() - foot.yMm());
    return Optional.of(new Seen(centre, dx, dy));
  }

  private static Shade root(RgbImage photo, PointPx p) {
    int x = (int) Math.max(0, Math.min(photo.width() - 1, Math.round(p.xPx())));
    int y = (int) Math.max(0, Math.min(photo.height() - 1, Math.round(p.yPx())));
    return new Shade(
        root(photo.value(x, y, 0)), root(photo.value(x, y, 1)), root(photo.value(x, y, 2)));
  }

  private static double root(int code) {
    return Math.sqrt(Srgb.linear((byte) code));
  }

  /**
   * Weighted least squares of a similarity about the sites' mean: {@code dx = a + s x - t y, dy = b
   * + s y + t x}; sites far out weigh less (Huber 1964, constant 1.345).
   */
  private static HoleGrid fit(List<Seen> seen) {
    double mx = seen.stream().mapToDouble(s -> s.at().xMm()).average().orElse(0);
    double my = seen.stream().mapToDouble(s -> s.at().yMm()).average().orElse(0);
    double[] weight = new double[seen.size()];
    Arrays.fill(weight, 1);
    double[] fit = new double[4];
    double[] miss = new double[seen.size()];
    double spread = 0;
    double moment = 1;
    double total = 1;
    for (int round = 0; round < ROUNDS; round++) {
      double[] sums = new double[6];
      for (int i = 0; i < weight.length; i++) {
        Seen s = seen.get(i);
        double x = s.at().xMm() - mx;
        double y = s.at().yMm() - my;
        sums[0] += weight[i];
        sums[1] += weight[i] * s.dx();
        sums[2] += weight[i] * s.dy();
        sums[3] += weight[i] * (x * x + y * y);
        sums[4] += weight[i] * (x * (s.dx() - fit[0]) + y * (s.dy() - fit[1]));
        sums[5] += weight[i] * (x * (s.dy() - fit[1]) - y * (s.dx() - fit[0]));
      }
      total = sums[0];
      moment = sums[3];
      fit = new double[] {sums[1] / total, sums[2] / total, sums[4] / moment, sums[5] / moment};
      for (int i = 0; i < weight.length; i++) {
        miss[i] = miss(seen.get(i), fit, mx, my);
      }
      spread = Math.max(0.3, 1.2 * median(miss));
      for (int i = 0; i < weight.length; i++) {
        weight[i] = Math.min(1, 1.345 * spread / Math.max(1e-9, miss[i]));
      }
    }
    // The median length of a 2-D normal miss is 1.177 standard deviations along an axis.
    double sigma = spread / 1.2 / 1.177;
    // The shift of the board's middle of sites; moved to the origin of the frame it would mix
    // with scale and turn.
    return new HoleGrid(
        fit[0],
        fit[1],
        Math.toDegrees(fit[3]),
        1 + fit[2],
        sigma / Math.sqrt(total),
        sigma / Math.sqrt(moment),
        seen.size());
  }

  private static double miss(Seen s, double[] fit, double mx, double my) {
    double x = s.at().xMm() - mx;
    double y = s.at().yMm() - my;
    return Math.hypot(
        s.dx() - fit[0] - fit[2] * x + fit[3] * y, s.dy() - fit[1] - fit[2] * y - fit[3] * x);
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
