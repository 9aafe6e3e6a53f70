// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.List;

/**
 * A calibration with what is to be said of it.
 *
 * @param result the lens, or why there is none
 * @param leftOut photos that were not used
 * @param retake what to photograph again before the lens is good; nothing where it is
 */
public record LensReport(LensResult result, List<LeftOut> leftOut, List<String> retake) {

  /**
   * A photo that was not used.
   *
   * @param photo its name
   * @param why why not
   */
  public record LeftOut(String photo, String why) {}

  /** Copies the lists. */
  public LensReport {
    leftOut = List.copyOf(leftOut);
    retake = List.copyOf(retake);
  }

  /** Says whether the lens can be used as it is. */
  public boolean good() {
    return result instanceof LensFit && retake.isEmpty();
  }
}
