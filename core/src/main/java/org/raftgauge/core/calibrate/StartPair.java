// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.raftgauge.core.book.Lens;

/** A moment with a first guess of the target's pose and of how the cameras stand. */
record StartPair(CalibratePair.Both both, ViewPose pose, ViewPose between) {
  /** The same pair, guessed from two moments, differs by less. */
  private static final double ALIKE_DEG = 3;

  private static final double ALIKE_SHARE = 0.15;

  /** Returns the moments that agree with the one that most agree with. */
  static List<StartPair> agreed(List<StartPair> starts) {
    List<StartPair> most = List.of();
    for (StartPair start : starts) {
      List<StartPair> like = starts.stream().filter(start::agrees).toList();
      most = like.size() > most.size() ? like : most;
    }
    return most;
  }

  private boolean agrees(StartPair other) {
    ViewPose apart = ViewPose.between(between, other.between);
    double turn = length(apart.turnDeg());
    double shift = Math.abs(length(between.shiftMm()) - length(other.between.shiftMm()));
    return turn < ALIKE_DEG && shift < ALIKE_SHARE * length(between.shiftMm());
  }

  /** Guesses from one moment; nothing where the target's points lie in line. */
  static Stream<StartPair> of(Lens first, Lens second, CalibratePair.Both both) {
    Optional<ViewPose> one = StartPose.of(first, both.first());
    Optional<ViewPose> two = StartPose.of(second, both.second());
    return one.isEmpty() || two.isEmpty()
        ? Stream.empty()
        : Stream.of(new StartPair(both, one.get(), ViewPose.between(one.get(), two.get())));
  }

  private static double length(List<Double> v) {
    return Math.sqrt(v.stream().mapToDouble(x -> x * x).sum());
  }
}
