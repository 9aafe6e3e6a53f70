// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.util.OptionalDouble;
import org.raftgauge.core.book.Planting;

/**
 * The plant that stands at a site at an instant.
 *
 * @param plant its id
 * @param planting the planting that it belongs to there
 * @param dat days after transplant, 0 or more; absent before transplanting
 * @param das days after sowing, 0 or more; absent where the day of sowing is not known
 * @param dac days after its last cut, 0 or more; absent where it was never cut
 */
public record Grown(
    String plant, Planting planting, OptionalDouble dat, OptionalDouble das, OptionalDouble dac) {

  /**
   * Returns the age that its growth curve runs on: days after the last cut, else after transplant,
   * else after sowing.
   */
  public OptionalDouble age() {
    if (dac.isPresent()) {
      return dac;
    }
    return dat.isPresent() ? dat : das;
  }
}
