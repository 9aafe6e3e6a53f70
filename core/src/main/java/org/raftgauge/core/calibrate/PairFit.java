// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;
import org.raftgauge.core.book.Lens;

/**
 * How two cameras stand to each other: a point {@code X} in the first's axes lies at {@code R X +
 * t} in the second's.
 *
 * @param first the first camera's lens
 * @param second the second camera's lens
 * @param turnDeg R as a rotation vector, degrees, 3 numbers
 * @param shiftMm t, mm, 3 numbers
 * @param shiftErrorMm standard error of the baseline, mm
 * @param rmsErrorPx root mean square distance between points seen and foretold, both cameras, px
 * @param rowErrorPx root mean square distance of the same point's rows in the rectified pair, px
 * @param worstRowPx the largest, px
 * @param photos the pairs it was fitted to
 */
public record PairFit(
    Lens first,
    Lens second,
    List<Double> turnDeg,
    List<Double> shiftMm,
    double shiftErrorMm,
    double rmsErrorPx,
    double rowErrorPx,
    double worstRowPx,
    List<String> photos) {

  /** Copies the lists. */
  public PairFit {
    turnDeg = List.copyOf(turnDeg);
    shiftMm = List.copyOf(shiftMm);
    photos = List.copyOf(photos);
  }

  /** Returns the distance between both cameras, mm. */
  public double baselineMm() {
    return Math.sqrt(shiftMm.stream().mapToDouble(v -> v * v).sum());
  }
}
