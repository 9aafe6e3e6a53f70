// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;

/** Places along one edge of a board in the photo, each of which pulls the pose across the edge. */
final class EdgePoints {
  /** Half the window in which an edge place is looked for about the chosen line, px. */
  private static final double WINDOW_PX = 3;

  private static final double SAMPLE_PX = 0.5;

  /** Error of one edge place: half a pixel, and a board's edge is cut to about a millimetre. */
  private static final double ERROR_PX = 0.5;

  private static final double ERROR_MM = 1;

  /** Neighbouring places share their errors (a bent edge): so many count as independent. */
  private static final double INDEPENDENT = 8;

  private EdgePoints() {}

  /** Returns the places along a line chosen for an edge. */
  static List<FitPose.Pull> on(
      LinearLight light, CameraPose pose, EdgeCuts.DeckEdge edge, EdgeCuts.Line line) {
    List<FitPose.Pull> pulls = new ArrayList<>();
    double mmPerPx = pose.mmPerPxAt(edge.at(0.5, 0));
    double errorPx = Math.hypot(ERROR_PX, ERROR_MM / mmPerPx);
    double shared = errorPx * Math.sqrt(EdgeCuts.cuts() / INDEPENDENT);
    for (int c = 0; c < EdgeCuts.cuts(); c++) {
      double part = EdgeCuts.part(c);
      Cut cut = new Cut(light, pose, edge, part, Math.signum(line.share()));
      OptionalDouble at = cut.edgeMm(line.atMm(part), mmPerPx);
      if (at.isPresent()) {
        pulls.add(pull(edge, part, pose.toPhoto(edge.at(part, at.getAsDouble())), shared));
      }
    }
    return pulls;
  }

  /** A cut across the edge, read in linear light. */
  private record Cut(
      LinearLight light, CameraPose pose, EdgeCuts.DeckEdge edge, double part, double sign) {

    /** Returns where the step of light has its centre of gravity, mm outward. */
    OptionalDouble edgeMm(double aboutMm, double mmPerPx) {
      double middle = aboutMm;
      double mass = 0;
      for (int round = 0; round < 3; round++) {
        double sum = 0;
        mass = 0;
        double reach = round == 0 ? WINDOW_PX : WINDOW_PX * 0.7;
        double before = at(middle - reach * mmPerPx);
        int n = (int) Math.round(2 * reach / SAMPLE_PX);
        for (int i = 0; i < n; i++) {
          double s = middle + (-reach + (i + 1) * 2 * reach / n) * mmPerPx;
          double after = at(s);
          double step = Math.max(0, sign * (after - before));
          mass += step;
          sum += step * (s - reach / n * mmPerPx);
          before = after;
        }
        if (!(mass > 0.003)) {
          return OptionalDouble.empty();
        }
        middle = sum / mass;
      }
      return Math.abs(middle - aboutMm) < WINDOW_PX * mmPerPx && onPhoto(middle)
          ? OptionalDouble.of(middle)
          : OptionalDouble.empty();
    }

    private double at(double outMm) {
      PointPx p = pose.toPhoto(edge.at(part, outMm));
      return light.at(p.xPx(), p.yPx());
    }

    private boolean onPhoto(double outMm) {
      return light.has(pose.toPhoto(edge.at(part, outMm)));
    }
  }

  /** Pulls with the distance of a photo place from the projected edge. */
  private static FitPose.Pull pull(
      EdgeCuts.DeckEdge edge, double part, PointPx seen, double errorPx) {
    return new FitPose.Pull() {
      @Override
      public int size() {
        return 1;
      }

      @Override
      public void residuals(CameraPose pose, double[] out, int at) {
        PointPx a = pose.toPhoto(edge.at(part - 0.02, 0));
        PointPx b = pose.toPhoto(edge.at(part + 0.02, 0));
        double dx = b.xPx() - a.xPx();
        double dy = b.yPx() - a.yPx();
        double across = (seen.xPx() - a.xPx()) * dy - (seen.yPx() - a.yPx()) * dx;
        out[at] = across / Math.hypot(dx, dy) / errorPx;
      }
    };
  }
}
