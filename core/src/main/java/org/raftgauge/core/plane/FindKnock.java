// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;

/**
 * Finds by how much a fixed camera's picture has shifted as a whole: the shift at which the edges
 * of all slots' boards together show best.
 *
 * <p>The search goes up to 45 % of the narrowest slot's short side, so that a row of boards cannot
 * be taken for the same row one board further on.
 */
final class FindKnock {
  private static final double SEARCH_SHARE = 0.45;

  /** No search beyond this share of the picture's width: such a camera wants setting up again. */
  private static final double WIDEST_SHARE = 0.1;

  private static final int PARTS = 24;

  /**
   * Shifts of so many steps, each a 320th of the width, are what a hanging camera does by itself.
   */
  private static final int STILL_STEPS = 2;

  /** A second shift elsewhere that shows this share of the best one's edges: not safe. */
  private static final double RIVAL_SHARE = 0.88;

  /** Square roots of light differ by this at a plain edge, and by less where both are dark. */
  private static final double PLAIN = 0.12;

  private static final double LEAST_PLAIN = 0.02;
  private static final double PLAIN_SHARE = 0.1;

  private final LinearLight light;
  private final double stepPx;
  private final double reachPx;
  private final List<Sample[]> edges = new ArrayList<>();

  /** A place of an edge in the unshifted picture, and the step across it, px. */
  private record Sample(double x, double y, double acrossX, double acrossY) {}

  /**
   * A shift of the whole picture.
   *
   * @param dxPx to the right
   * @param dyPx down
   * @param share mean share of edges that show at it, 0..1
   * @param safe whether no other shift comes near it
   */
  record Knock(double dxPx, double dyPx, double share, boolean safe) {
    double lengthPx() {
      return Math.hypot(dxPx, dyPx);
    }
  }

  /** Prepares the edges of boards at their expected places. */
  FindKnock(LinearLight light, int photoWidthPx, List<CameraPose> poses, List<Board> boards) {
    this.light = light;
    this.stepPx = Math.max(1, photoWidthPx / 320.0);
    double reach = WIDEST_SHARE * photoWidthPx;
    for (int i = 0; i < poses.size(); i++) {
      Board board = boards.get(i);
      double mmPerPx = poses.get(i).mmPerPxAt(BoardPlaces.centre(board));
      double sidePx = Math.min(board.widthMm(), board.lengthMm()) / mmPerPx;
      reach = Math.min(reach, SEARCH_SHARE * sidePx);
      for (EdgeCuts.DeckEdge edge : BoardEdges.edges(board)) {
        edges.add(samples(poses.get(i), edge, mmPerPx));
      }
    }
    this.reachPx = reach;
  }

  private Sample[] samples(CameraPose pose, EdgeCuts.DeckEdge edge, double mmPerPx) {
    Sample[] samples = new Sample[PARTS];
    for (int i = 0; i < PARTS; i++) {
      double part = 0.06 + 0.88 * (i + 0.5) / PARTS;
      PointPx at = pose.toPhoto(edge.at(part, 0));
      PointPx out = pose.toPhoto(edge.at(part, stepPx * mmPerPx));
      samples[i] = new Sample(at.xPx(), at.yPx(), out.xPx() - at.xPx(), out.yPx() - at.yPx());
    }
    return samples;
  }

  /**
   * Returns the shift at which the edges show best between leaves or, where leaves hide them, at
   * which the canopy's own edges lie by them best; nothing where neither does.
   */
  Optional<Knock> find() {
    return best(true).or(() -> best(false));
  }

  private Optional<Knock> best(boolean leafHides) {
    int n = (int) Math.floor(reachPx / stepPx);
    double[][] shares = new double[2 * n + 1][2 * n + 1];
    int bestX = 0;
    int bestY = 0;
    // No shift under the best still one can be the best or its rival.
    double least = fillStill(shares, n, leafHides);
    for (int y = -n; y <= n; y++) {
      for (int x = -n; x <= n; x++) {
        if (Math.max(Math.abs(x), Math.abs(y)) > STILL_STEPS) {
          shares[y + n][x + n] = share(x * stepPx, y * stepPx, least, leafHides);
        }
        if (shares[y + n][x + n] > shares[bestY + n][bestX + n]) {
          bestX = x;
          bestY = y;
        }
      }
    }
    if (shares[bestY + n][bestX + n] < 0.25) {
      return Optional.empty();
    }
    int[] still = stillBest(shares, n);
    if (shares[still[1]][still[0]] >= RIVAL_SHARE * shares[bestY + n][bestX + n]) {
      double share = shares[still[1]][still[0]];
      return Optional.of(new Knock((still[0] - n) * stepPx, (still[1] - n) * stepPx, share, true));
    }
    double best = shares[bestY + n][bestX + n];
    double rival = rival(shares, bestX + n, bestY + n);
    return Optional.of(new Knock(bestX * stepPx, bestY * stepPx, best, rival < RIVAL_SHARE * best));
  }

  /** Writes the shares near no shift at all and returns the largest. */
  private double fillStill(double[][] shares, int n, boolean leafHides) {
    double most = 0;
    for (int y = Math.max(0, n - STILL_STEPS); y <= Math.min(2 * n, n + STILL_STEPS); y++) {
      for (int x = Math.max(0, n - STILL_STEPS); x <= Math.min(2 * n, n + STILL_STEPS); x++) {
        shares[y][x] = share((x - n) * stepPx, (y - n) * stepPx, 0, leafHides);
        most = Math.max(most, shares[y][x]);
      }
    }
    return most;
  }

  /**
   * Returns the best place of the shares near no shift at all. A camera that hangs still is the
   * rule: where the edges show there nearly as well as anywhere, leaves or board gaps made the
   * other place look better.
   */
  private static int[] stillBest(double[][] shares, int n) {
    int[] best = {n, n};
    for (int y = Math.max(0, n - STILL_STEPS); y <= Math.min(2 * n, n + STILL_STEPS); y++) {
      for (int x = Math.max(0, n - STILL_STEPS); x <= Math.min(2 * n, n + STILL_STEPS); x++) {
        if (shares[y][x] > shares[best[1]][best[0]]) {
          best = new int[] {x, y};
        }
      }
    }
    return best;
  }

  /** Returns the best share more than three steps away in x or y. */
  private static double rival(double[][] shares, int bestX, int bestY) {
    double rival = 0;
    for (int y = 0; y < shares.length; y++) {
      for (int x = 0; x < shares.length; x++) {
        if (Math.max(Math.abs(x - bestX), Math.abs(y - bestY)) > 3) {
          rival = Math.max(rival, shares[y][x]);
        }
      }
    }
    return rival;
  }

  /**
   * Returns the mean over the edges of how plainly a step of one sign runs along each; 0 as soon as
   * that cannot come over {@code least} any more.
   */
  private double share(double dx, double dy, double least, boolean leafHides) {
    double sum = 0;
    int left = edges.size();
    for (Sample[] edge : edges) {
      if (sum + (double) left-- / edges.size() < least) {
        return 0;
      }
      double signed = 0;
      for (Sample s : edge) {
        signed += step(s, dx, dy, leafHides) / PARTS;
      }
      sum += Math.abs(signed) / edges.size();
    }
    return sum;
  }

  /**
   * Returns the step of light outwards, -1 to 1, where 1 is a plain one: a board and water that are
   * both dark differ by less than white ones do. Where leaves hide the edge it is 0.
   */
  private double step(Sample s, double dx, double dy, boolean leafHides) {
    double outX = s.x + dx + s.acrossX;
    double outY = s.y + dy + s.acrossY;
    double inX = s.x + dx - s.acrossX;
    double inY = s.y + dy - s.acrossY;
    if (leafHides && (light.isLeafAt(outX, outY) || light.isLeafAt(inX, inY))) {
      return 0;
    }
    double out = root(outX, outY);
    double in = root(inX, inY);
    double plain = Math.min(PLAIN, LEAST_PLAIN + PLAIN_SHARE * (out + in));
    return Math.max(-1, Math.min(1, (out - in) / plain));
  }

  private double root(double x, double y) {
    return Math.sqrt(light.at(x, y));
  }
}
