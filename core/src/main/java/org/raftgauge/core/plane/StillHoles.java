// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Asks holes and plants whether boards lie where they are thought to, for dark boards on dark water
 * show little of their edges: a witness of its own, good for shifts under half a pitch.
 */
final class StillHoles {
  /** Boards that float in a pond wander by about this much, mm (working value). */
  private static final double WANDERS_MM = 15;

  /** A grid's place that is less sure than this says nothing, mm. */
  private static final double LEAST_SURE_MM = 4;

  /** Plants lean to one side by less than this share of the pitch (working value). */
  private static final double FAR_OFF = 0.2;

  /** No crop on rafts stands higher over its deck, mm (working value). */
  private static final double HIGHEST_MM = 300;

  private StillHoles() {}

  /**
   * Says whether the grid of holes shows a shift: one longer than boards wander, twice over, and so
   * short that no hole comes to lie by another's place.
   *
   * @param shiftMm on the deck
   * @param layout of the board
   */
  static boolean show(double shiftMm, Layout layout) {
    return shiftMm > 2 * WANDERS_MM && shiftMm < 0.5 * pitchMm(layout);
  }

  private static double pitchMm(Layout layout) {
    return Math.min(layout.grid().pitchXMm(), layout.grid().pitchYMm());
  }

  /**
   * Returns how far holes and plants lie from where they should, where that is certain and more
   * than plants lean. Outwards from the camera's foot they may lie as far as high plants do.
   *
   * @param photo the photo
   * @param pose where the board should lie
   * @param layout its layout
   * @return mm; empty where they do not show or lie right
   */
  static OptionalDouble farOffMm(RgbImage photo, CameraPose pose, Layout layout) {
    return HoleGrid.fit(photo, pose, layout)
        .filter(grid -> grid.shiftErrorMm() < LEAST_SURE_MM)
        .map(grid -> OptionalDouble.of(beyondHeightsMm(grid, pose, layout)))
        .filter(off -> off.getAsDouble() > FAR_OFF * pitchMm(layout))
        .orElse(OptionalDouble.empty());
  }

  /** Returns the length of a grid's shift less what plants of any height explain. */
  private static double beyondHeightsMm(HoleGrid grid, CameraPose pose, Layout layout) {
    PointMm centre = BoardPlaces.centre(layout.board());
    double x = centre.xMm() - pose.foot().xMm();
    double y = centre.yMm() - pose.foot().yMm();
    double away = Math.max(1e-9, Math.hypot(x, y));
    double outwards = (grid.shiftXMm() * x + grid.shiftYMm() * y) / away;
    double aside = (grid.shiftYMm() * x - grid.shiftXMm() * y) / away;
    double high = Math.min(HIGHEST_MM, pose.heightMm() / 2);
    double explained = Math.max(0, Math.min(outwards, (pose.magnification(high) - 1) * away));
    return Math.hypot(aside, outwards - explained);
  }

  /**
   * Says whether the grids of the boards lie where they should, as far as they show.
   *
   * @param photo the photo
   * @param poses where each board should lie
   * @param layouts their layouts, in the same order
   * @return true if at least half of the boards show a grid, and each one that does lies there
   */
  static boolean tell(RgbImage photo, List<CameraPose> poses, List<Layout> layouts) {
    int still = 0;
    int moved = 0;
    for (int i = 0; i < poses.size(); i++) {
      Optional<HoleGrid> grid = HoleGrid.fit(photo, poses.get(i), layouts.get(i));
      if (grid.isPresent() && grid.get().shiftErrorMm() < LEAST_SURE_MM) {
        boolean near = Math.hypot(grid.get().shiftXMm(), grid.get().shiftYMm()) < WANDERS_MM;
        still += near ? 1 : 0;
        moved += near ? 0 : 1;
      }
    }
    return moved == 0 && still > 0 && 2 * still >= poses.size();
  }
}
