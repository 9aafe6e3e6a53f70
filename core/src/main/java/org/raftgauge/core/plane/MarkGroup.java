// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;

/**
 * Marks that one board explains, with the pose that explains them.
 *
 * @param layout the board's layout
 * @param marks the marks, at most one of each id
 * @param fit the pose
 */
record MarkGroup(Layout layout, List<Mark> marks, PoseFit fit) {

  /**
   * Returns the group of these marks.
   *
   * @param layout a layout that has all of them
   * @param marks at least one
   * @param prior what is known of the camera
   * @return the group with its fitted pose
   */
  static MarkGroup of(Layout layout, List<Mark> marks, FitPose.Prior prior) {
    List<Tie> ties = marks.stream().flatMap(m -> m.ties(layout).stream()).toList();
    CameraPose start = FromAbove.of(prior.lens(), ties);
    return new MarkGroup(layout, List.copyOf(marks), FitPose.fit(start, pulls(ties), prior));
  }

  private static List<FitPose.Pull> pulls(List<Tie> ties) {
    return ties.stream().map(FitPose::pull).toList();
  }

  /** Returns the group with one more mark. */
  MarkGroup with(Mark mark, FitPose.Prior prior) {
    List<Mark> more = new ArrayList<>(marks);
    more.add(mark);
    return of(layout, more, prior);
  }

  /** Returns the group with one mark less. */
  MarkGroup without(Mark mark, FitPose.Prior prior) {
    return of(layout, marks.stream().filter(m -> !m.equals(mark)).toList(), prior);
  }

  boolean has(int id) {
    return marks.stream().anyMatch(m -> m.id() == id);
  }

  Optional<Mark> tag() {
    return marks.stream().filter(Mark::isTag).findFirst();
  }

  /** Returns the root mean square distance between marks' corners seen and foretold, px. */
  double rmsPx() {
    double sum = 0;
    for (Mark mark : marks) {
      sum += Math.pow(missPx(mark), 2) / marks.size();
    }
    return Math.sqrt(sum);
  }

  /** Returns the root mean square distance between a mark's corners seen and foretold, px. */
  double missPx(Mark mark) {
    double sum = 0;
    for (Tie tie : mark.ties(layout)) {
      sum += Math.pow(tie.missPx(fit.pose()), 2) / 4;
    }
    return Math.sqrt(sum);
  }

  /** Returns how far a mark's middle is from its foretold place, mm, where the board has it. */
  double missMm(Mark mark) {
    PointMm seen = fit.pose().toDeck(mark.centrePx());
    return distanceMm(seen, middle(mark));
  }

  /** Says whether a mark lies on this board. */
  boolean covers(Mark mark) {
    PointMm p = fit.pose().toDeck(mark.centrePx());
    return p.xMm() > 0
        && p.yMm() > 0
        && p.xMm() < layout.board().widthMm()
        && p.yMm() < layout.board().lengthMm();
  }

  /**
   * Returns how far a mark may be from its foretold place: the group's pose is carried on over the
   * distance to the nearest mark it has. 15 mm of slack, 3 % (rotation and scale of a small mark),
   * and what an unknown tilt of 6 degrees does over that distance.
   */
  double gateMm(Mark mark) {
    double near = Double.POSITIVE_INFINITY;
    for (Mark known : marks) {
      near = Math.min(near, distanceMm(middle(known), middle(mark)));
    }
    double tilt = Math.tan(Math.toRadians(6)) / fit.pose().heightMm();
    return 15 + 0.03 * near + near * near * tilt;
  }

  private PointMm middle(Mark mark) {
    List<PointMm> places = mark.places(layout).orElseThrow();
    return new PointMm(
        (places.get(0).xMm() + places.get(2).xMm()) / 2,
        (places.get(0).yMm() + places.get(2).yMm()) / 2);
  }

  private static double distanceMm(PointMm a, PointMm b) {
    return Math.hypot(a.xMm() - b.xMm(), a.yMm() - b.yMm());
  }
}
