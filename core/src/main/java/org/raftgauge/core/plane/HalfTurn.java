// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.OrientationMark;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.PointPx;

/**
 * Which of a board's two ends is its origin end.
 *
 * @param pose the pose, turned by half a turn where the mark says so
 * @param known whether that is settled
 * @param note what was found of the mark, where there is something to say
 */
record HalfTurn(CameraPose pose, boolean known, Optional<String> note) {
  /** Holes within this of each other count as the same place, mm. */
  private static final double SAME_MM = 5;

  /**
   * A mark differs from the board about it by at least this, as root light or as chroma, 0..1; and
   * twice as much as the place half a turn away does. Guesses without a source.
   */
  private static final double PLAIN = 0.12;

  private static final double TIMES = 2;

  static final String TURNED = "the board lies turned by half a turn";
  private static final String IN_A_MIRROR = "the orientation mark lies as in a mirror";

  /** A mark that is as green as this against its ring is a leaf. */
  private static final double LEAF_GREEN = 1.2;

  /** Says whether the layout's mark was seen, and at its far place. */
  boolean turned() {
    return note.equals(Optional.of(TURNED));
  }

  /** Says whether the layout's mark was seen where only a mirrored picture shows it. */
  boolean mirrored() {
    return note.equals(Optional.of(IN_A_MIRROR));
  }

  /** Settles the half turn by the layout's mark, else by whether the grid has two ways to lie. */
  static HalfTurn of(LinearLight light, CameraPose pose, Layout layout) {
    if (layout.orientationMark().isEmpty()) {
      return new HalfTurn(pose, !sameAfterHalfTurn(layout), Optional.empty());
    }
    OrientationMark mark = layout.orientationMark().get();
    Board board = layout.board();
    double here = strength(light, pose, mark, new PointMm(mark.xMm(), mark.yMm()));
    double there =
        strength(
            light,
            pose,
            mark,
            new PointMm(board.widthMm() - mark.xMm(), board.lengthMm() - mark.yMm()));
    if (here > PLAIN && here > TIMES * there) {
      return new HalfTurn(pose, true, Optional.empty());
    }
    if (there > PLAIN && there > TIMES * here) {
      return new HalfTurn(turned(pose, board), true, Optional.of(TURNED));
    }
    double mirrored = mirrored(light, pose, layout);
    boolean inMirror = mirrored > PLAIN && mirrored > TIMES * Math.max(here, there);
    return new HalfTurn(
        pose,
        false,
        Optional.of(
            inMirror
                ? IN_A_MIRROR
                : "the orientation mark could not be told from the same place at the other end of the board"));
  }

  /** Returns how plainly the mark lies at one of its two places in a mirrored picture. */
  private static double mirrored(LinearLight light, CameraPose pose, Layout layout) {
    OrientationMark mark = layout.orientationMark().get();
    double x = layout.board().widthMm() - mark.xMm();
    double y = layout.board().lengthMm() - mark.yMm();
    double acrossX = strength(light, pose, mark, new PointMm(x, mark.yMm()));
    double acrossY = strength(light, pose, mark, new PointMm(mark.xMm(), y));
    return Math.max(acrossX, acrossY);
  }

  /** Returns the pose over the same board with its far corner taken as the origin. */
  static CameraPose turned(CameraPose pose, Board board) {
    double[] r = pose.rotation();
    double[] t = pose.translationMm();
    for (int i = 0; i < 3; i++) {
      t[i] += r[3 * i] * board.widthMm() + r[3 * i + 1] * board.lengthMm();
      r[3 * i] = -r[3 * i];
      r[3 * i + 1] = -r[3 * i + 1];
    }
    return CameraPose.of(pose.lens(), r, t);
  }

  /** Says whether a layout's holes lie on its holes after half a turn of the board. */
  static boolean sameAfterHalfTurn(Layout layout) {
    SiteGrid grid = layout.grid();
    for (SiteId site : grid.sites()) {
      PointMm hole = grid.centre(site);
      double x = layout.board().widthMm() - hole.xMm();
      double y = layout.board().lengthMm() - hole.yMm();
      boolean met =
          grid.sites().stream()
              .map(grid::centre)
              .anyMatch(p -> Math.hypot(p.xMm() - x, p.yMm() - y) < SAME_MM);
      if (!met) {
        return false;
      }
    }
    return true;
  }

  /** Returns how plainly a mark of this look lies at a place: inner disc against a ring. */
  private static double strength(
      LinearLight light, CameraPose pose, OrientationMark mark, PointMm at) {
    double[] inner = mean(light, pose, at, 0, 0.35 * mark.diameterMm());
    double[] ring = mean(light, pose, at, 0.75 * mark.diameterMm(), mark.diameterMm());
    double lighter = Math.sqrt(luminance(inner)) - Math.sqrt(luminance(ring));
    return switch (mark.look()) {
      case DARK -> -lighter;
      case LIGHT -> leafGreen(inner, ring) ? 0 : lighter;
      case COLOURED -> notLeafChroma(inner, ring);
    };
  }

  /** Says whether a light disc is a leaf on a dark board: greener than what is about it. */
  private static boolean leafGreen(double[] inner, double[] ring) {
    double green = inner[1] / Math.max(1e-3, ring[1]);
    double red = inner[0] / Math.max(1e-3, ring[0]);
    double blue = inner[2] / Math.max(1e-3, ring[2]);
    return green > LEAF_GREEN * Math.max(red, blue);
  }

  private static double luminance(double[] rgb) {
    return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
  }

  /**
   * Returns how much more coloured the disc is than the ring (the light's own tint taken out),
   * nothing where green leads.
   */
  private static double notLeafChroma(double[] inner, double[] ring) {
    double[] c = new double[3];
    for (int i = 0; i < 3; i++) {
      c[i] = inner[i] / Math.max(1e-3, ring[i]);
    }
    double most = Math.max(c[0], Math.max(c[1], c[2]));
    double least = Math.min(c[0], Math.min(c[1], c[2]));
    boolean green = c[1] >= 1.05 * c[2] && c[1] >= c[0];
    return green || !(most > 0) ? 0 : (most - least) / most;
  }

  private static double[] mean(
      LinearLight light, CameraPose pose, PointMm at, double fromMm, double toMm) {
    double[] sum = new double[3];
    int n = 0;
    for (int k = 0; k < 6; k++) {
      double radius = fromMm + (toMm - fromMm) * (k + 0.5) / 6;
      for (int a = 0; a < 24; a++) {
        double angle = 2 * Math.PI * a / 24;
        PointPx p =
            pose.toPhoto(
                at.xMm() + radius * Math.cos(angle), at.yMm() + radius * Math.sin(angle), 0);
        double[] rgb = light.rgbAt(p);
        for (int c = 0; c < 3; c++) {
          sum[c] += rgb[c];
        }
        n++;
      }
    }
    return new double[] {sum[0] / n, sum[1] / n, sum[2] / n};
  }
}
