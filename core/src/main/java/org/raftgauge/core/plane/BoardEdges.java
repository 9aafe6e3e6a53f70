// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.marker.LinearLight;

/**
 * Places a board by its own four edges, from a rough pose.
 *
 * <p>Of the lines that could be each edge, those four are taken that a board of this size, moved,
 * turned and scaled a little, explains best; one edge may be missing. The pose is then fitted to
 * the edge places themselves.
 */
final class BoardEdges {
  /** Edges of foam boards are straight to about that, mm; a guess without a source. */
  private static final double STRAIGHT_MM = 2;

  /** An edge that so many of its cuts show counts as seen. */
  private static final double SEEN_SHARE = 0.3;

  private final LinearLight light;
  private final FitPose.Prior prior;

  /**
   * A board placed by its edges.
   *
   * @param fit the pose
   * @param edgesSeen edges that were seen, 3 or 4
   * @param share mean share of cuts that showed the edges, 0..1
   * @param weakest share of cuts that showed the least plain edge, 0 where one was not seen
   */
  record Placed(PoseFit fit, int edgesSeen, double share, double weakest) {}

  BoardEdges(LinearLight light, FitPose.Prior prior) {
    this.light = light;
    this.prior = prior;
  }

  /** Returns a board's edges, clockwise from the one between its first two corners. */
  static List<EdgeCuts.DeckEdge> edges(Board board) {
    List<PointMm> c = BoardPlaces.corners(board);
    return List.of(
        new EdgeCuts.DeckEdge(c.get(0), c.get(1), 0, -1),
        new EdgeCuts.DeckEdge(c.get(1), c.get(2), 1, 0),
        new EdgeCuts.DeckEdge(c.get(2), c.get(3), 0, 1),
        new EdgeCuts.DeckEdge(c.get(3), c.get(0), -1, 0));
  }

  /**
   * Places a board by what shows of its edges between leaves, or by the canopy's where that is too
   * little.
   *
   * @param start a rough pose
   * @param board its size
   * @param reachMm how far its edges may be off, mm
   * @param also what else pulls on the pose, such as a marker
   * @return the board placed, or nothing where fewer than three edges were seen
   */
  Optional<Placed> place(CameraPose start, Board board, double reachMm, List<FitPose.Pull> also) {
    return place(start, board, reachMm, also, true)
        .or(() -> place(start, board, reachMm, also, false));
  }

  private Optional<Placed> place(
      CameraPose start, Board board, double reachMm, List<FitPose.Pull> also, boolean leafHides) {
    List<EdgeCuts> cuts = new ArrayList<>();
    List<List<EdgeCuts.Line>> lines = new ArrayList<>();
    for (EdgeCuts.DeckEdge edge : edges(board)) {
      EdgeCuts cut = new EdgeCuts(light, start, edge, reachMm, leafHides);
      cuts.add(cut);
      lines.add(cut.lines());
    }
    Choice best = new Choice(board, reachMm).best(lines);
    if (best.seen() < 3) {
      return Optional.empty();
    }
    List<FitPose.Pull> pulls = new ArrayList<>(also);
    for (int e = 0; e < 4; e++) {
      if (best.lines().get(e).isPresent()) {
        pulls.addAll(EdgePoints.on(light, start, cuts.get(e).edge(), best.lines().get(e).get()));
      }
    }
    PoseFit fit = FitPose.fit(start, pulls, prior);
    return Optional.of(new Placed(fit, best.seen(), best.share(), best.weakest()));
  }

  /** The choice of one line an edge. */
  private static final class Choice {
    private final Board board;
    private final List<EdgeCuts.DeckEdge> edges;
    private final double far;
    private final double reachMm;
    private List<Optional<EdgeCuts.Line>> best =
        List.of(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    private double bestScore = Double.NEGATIVE_INFINITY;

    Choice(Board board, double reachMm) {
      this.board = board;
      this.edges = edges(board);
      this.far = Math.hypot(board.widthMm(), board.lengthMm()) / 2;
      this.reachMm = reachMm;
    }

    Choice best(List<List<EdgeCuts.Line>> lines) {
      choose(lines, new ArrayList<>());
      return this;
    }

    List<Optional<EdgeCuts.Line>> lines() {
      return best;
    }

    int seen() {
      return (int)
          best.stream()
              .filter(l -> l.isPresent() && Math.abs(l.get().share()) > SEEN_SHARE)
              .count();
    }

    double share() {
      return best.stream()
          .mapToDouble(l -> l.map(line -> Math.abs(line.share())).orElse(0.0))
          .average()
          .orElse(0);
    }

    double weakest() {
      return best.stream()
          .mapToDouble(l -> l.map(line -> Math.abs(line.share())).orElse(0.0))
          .min()
          .orElse(0);
    }

    private void choose(List<List<EdgeCuts.Line>> lines, List<Optional<EdgeCuts.Line>> chosen) {
      int e = chosen.size();
      if (e == 4) {
        double score = score(chosen);
        if (score > bestScore) {
          bestScore = score;
          best = List.copyOf(chosen);
        }
        return;
      }
      chosen.add(Optional.empty());
      choose(lines, chosen);
      for (EdgeCuts.Line line : lines.get(e)) {
        chosen.set(e, Optional.of(line));
        choose(lines, chosen);
      }
      chosen.remove(e);
    }

    /**
     * Shares of the lines, less what their offsets cost: residuals of the best shift, turn and
     * scale (2 mm), and those themselves (reach / 2, 2 %).
     */
    private double score(List<Optional<EdgeCuts.Line>> chosen) {
      List<double[]> rows = new ArrayList<>();
      double share = 0;
      double bright = 0;
      for (int e = 0; e < 4; e++) {
        if (chosen.get(e).isPresent()) {
          EdgeCuts.Line line = chosen.get(e).get();
          share += Math.abs(line.share());
          bright += line.share();
          EdgeCuts.DeckEdge edge = edges.get(e);
          rows.add(row(edge, edge.from(), line.startMm()));
          rows.add(row(edge, edge.to(), line.endMm()));
        }
      }
      // A board is as a rule lighter than all that surrounds it, or darker.
      double sameSign = 0.1 * Math.abs(bright);
      double most = share + sameSign; // costs only take away from it
      return rows.isEmpty() ? 0 : most <= bestScore ? most : most - 0.02 * cost(rows);
    }

    /** One equation: outward shift of a corner by shift x, y, turn and scale, over 2 mm. */
    private double[] row(EdgeCuts.DeckEdge edge, PointMm corner, double offsetMm) {
      double x = corner.xMm() - board.widthMm() / 2;
      double y = corner.yMm() - board.lengthMm() / 2;
      double turn = (-y * edge.outX() + x * edge.outY()) / far;
      double scale = (x * edge.outX() + y * edge.outY()) / far;
      return new double[] {edge.outX(), edge.outY(), turn, scale, offsetMm};
    }

    private double cost(List<double[]> rows) {
      double[] spread = {reachMm / 2, reachMm / 2, reachMm / 2, 0.02 * far};
      RealMatrix a = MatrixUtils.createRealMatrix(rows.size() + 4, 4);
      double[] b = new double[rows.size() + 4];
      for (int i = 0; i < rows.size(); i++) {
        for (int j = 0; j < 4; j++) {
          a.setEntry(i, j, rows.get(i)[j] / STRAIGHT_MM);
        }
        b[i] = rows.get(i)[4] / STRAIGHT_MM;
      }
      for (int j = 0; j < 4; j++) {
        a.setEntry(rows.size() + j, j, 1 / spread[j]);
      }
      RealMatrix normal = a.transposeMultiply(a);
      double[] x =
          new LUDecomposition(normal)
              .getSolver()
              .solve(new ArrayRealVector(a.preMultiply(b), false))
              .toArray();
      double[] fitted = a.operate(x);
      double sum = 0;
      for (int i = 0; i < b.length; i++) {
        sum += (b[i] - fitted[i]) * (b[i] - fitted[i]);
      }
      return sum;
    }
  }
}
