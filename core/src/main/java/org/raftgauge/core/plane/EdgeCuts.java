// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;

/**
 * The light on cuts across one edge of a board near where it should be, and the straight lines that
 * could be that edge.
 *
 * <p>Offsets are deck mm outward from the expected edge. Every line (offset at both ends) is scored
 * by the share of cuts that have a step of light there, all of the same sign: leaves that hang over
 * hide some cuts but make no line. The scheme is a Hough transform in (offset, offset).
 */
final class EdgeCuts {
  private static final int CUTS = 48;

  /** Ends of the edge are left out: corners are rounded, broken, or carry markers. */
  private static final double END_SHARE = 0.06;

  private static final int MAX_LINES = 6;

  private final DeckEdge edge;
  private final boolean leafHides;
  private final double stepMm;
  private final int half;
  private final double[][] steps;
  private final int inPicture;

  /**
   * A line that could be the edge.
   *
   * @param startMm its offset at the edge's first corner
   * @param endMm its offset at the edge's second corner
   * @param share share of all cuts that show it, signed: negative where the outside is darker
   */
  record Line(double startMm, double endMm, double share) {
    double atMm(double part) {
      return startMm + part * (endMm - startMm);
    }
  }

  /** One edge of a board: two corners, and the direction out of the board. */
  record DeckEdge(PointMm from, PointMm to, double outX, double outY) {
    PointMm at(double part, double outMm) {
      return new PointMm(
          from.xMm() + part * (to.xMm() - from.xMm()) + outMm * outX,
          from.yMm() + part * (to.yMm() - from.yMm()) + outMm * outY);
    }
  }

  /**
   * Reads the cuts.
   *
   * @param light the photo's light
   * @param pose where the board should be
   * @param edge the edge
   * @param reachMm how far it may be off, mm
   * @param leafHides whether nothing is read where leaf lies; else its edges count too
   */
  EdgeCuts(LinearLight light, CameraPose pose, DeckEdge edge, double reachMm, boolean leafHides) {
    this.edge = edge;
    this.leafHides = leafHides;
    this.stepMm = pose.mmPerPxAt(edge.at(0.5, 0));
    this.half = (int) Math.ceil(reachMm / stepMm);
    this.steps = new double[CUTS][2 * half + 1];
    int seen = 0;
    for (int c = 0; c < CUTS; c++) {
      seen += cut(light, pose, c) ? 1 : 0;
    }
    this.inPicture = seen;
    clip();
  }

  /**
   * Returns the share of a board's edges, as far as they lie in the photo, along which leaf lies.
   */
  static double leafShare(LinearLight light, CameraPose pose, Board board) {
    int all = 0;
    int leaf = 0;
    for (DeckEdge edge : BoardEdges.edges(board)) {
      for (int c = 0; c < CUTS; c++) {
        PointPx p = pose.toPhoto(edge.at(part(c), 0));
        all += light.has(p) ? 1 : 0;
        leaf += light.has(p) && light.isLeafAt(p.xPx(), p.yPx()) ? 1 : 0;
      }
    }
    return all == 0 ? 0 : (double) leaf / all;
  }

  static double part(int cut) {
    return END_SHARE + (1 - 2 * END_SHARE) * (cut + 0.5) / CUTS;
  }

  DeckEdge edge() {
    return edge;
  }

  static int cuts() {
    return CUTS;
  }

  /** Reads one cut as steps of light over two px; false where the edge is beyond the photo. */
  private boolean cut(LinearLight light, CameraPose pose, int c) {
    double[] values = new double[2 * half + 3];
    for (int i = 0; i < values.length; i++) {
      PointPx p = pose.toPhoto(edge.at(part(c), (i - half - 1) * stepMm));
      boolean hidden = !light.has(p) || (leafHides && light.isLeafAt(p.xPx(), p.yPx()));
      values[i] = hidden ? -1 : Math.sqrt(light.at(p.xPx(), p.yPx()));
    }
    for (int i = 0; i < steps[c].length; i++) {
      boolean both = values[i] >= 0 && values[i + 2] >= 0;
      steps[c][i] = both ? values[i + 2] - values[i] : 0;
    }
    return light.has(pose.toPhoto(edge.at(part(c), 0)));
  }

  /** Scales the steps so that 1 is a plain edge, and cuts off what is stronger. */
  private void clip() {
    double[] strongest = new double[CUTS];
    for (int c = 0; c < CUTS; c++) {
      for (double s : steps[c]) {
        strongest[c] = Math.max(strongest[c], Math.abs(s));
      }
    }
    Arrays.sort(strongest);
    // A third of the usual strongest step, and never under 0.02 (noise of a dim photo).
    double plain = Math.max(0.02, strongest[CUTS / 2] / 3);
    for (double[] cut : steps) {
      for (int i = 0; i < cut.length; i++) {
        cut[i] = Math.max(-1, Math.min(1, cut[i] / plain));
      }
    }
  }

  /** Returns the best lines, best first, at most six, each well apart from the others. */
  List<Line> lines() {
    List<Line> all = new ArrayList<>();
    if (inPicture < CUTS / 3) {
      return all;
    }
    int most = Math.min(half, Math.max(4, half / 2));
    double[][] shares = new double[2 * most + 1][];
    for (int slope = -most; slope <= most; slope++) {
      shares[slope + most] = shares(slope);
    }
    for (int a = -half; a <= half; a++) {
      for (int slope = -most; slope <= most; slope++) {
        double share = shares[slope + most][a + half];
        if (Math.abs(share) > 0.2) {
          double start = (a - slope / 2.0) * stepMm;
          all.add(new Line(start, start + slope * stepMm, share));
        }
      }
    }
    all.sort(Comparator.comparingDouble(l -> -Math.abs(l.share())));
    return apart(all);
  }

  /** Returns the share of each line of a slope, by its offset at the edge's middle. */
  private double[] shares(int slope) {
    double[] sums = new double[2 * half + 1];
    for (int c = 0; c < CUTS; c++) {
      double[] cut = steps[c];
      int drift = (int) Math.round((part(c) - 0.5) * slope);
      int end = Math.min(sums.length, sums.length - drift);
      for (int i = Math.max(0, -drift); i < end; i++) {
        sums[i] += cut[i + drift];
      }
    }
    for (int i = 0; i < sums.length; i++) {
      sums[i] /= CUTS;
    }
    return sums;
  }

  private List<Line> apart(List<Line> sorted) {
    List<Line> kept = new ArrayList<>();
    for (Line line : sorted) {
      boolean near =
          kept.stream()
              .anyMatch(
                  k ->
                      Math.abs(k.startMm() - line.startMm()) < 3.5 * stepMm
                          && Math.abs(k.endMm() - line.endMm()) < 3.5 * stepMm);
      if (!near) {
        kept.add(line);
      }
      if (kept.size() == MAX_LINES) {
        break;
      }
    }
    return kept;
  }
}
