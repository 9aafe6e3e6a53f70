// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

import java.util.OptionalDouble;

/**
 * A fit that did not work out.
 *
 * @param reason what went wrong, for a reader
 * @param sum the sum of squares that was come down to, where anything was tried
 */
public record Unsolved(String reason, OptionalDouble sum) implements FitOutcome {

  /**
   * Says why nothing was tried.
   *
   * @param reason what went wrong, for a reader
   */
  public Unsolved(String reason) {
    this(reason, OptionalDouble.empty());
  }
}
