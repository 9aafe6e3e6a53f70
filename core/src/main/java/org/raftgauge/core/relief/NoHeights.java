// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.OptionalDouble;

/**
 * Heights that could not be told.
 *
 * @param reason why, in words
 * @param remedy what to do
 * @param rowsPx how far the two cameras' rows lie apart, px, where told
 */
public record NoHeights(String reason, String remedy, OptionalDouble rowsPx) implements Heights {

  /**
   * Says why, where the rows were not told.
   *
   * @param reason why, in words
   * @param remedy what to do
   */
  public NoHeights(String reason, String remedy) {
    this(reason, remedy, OptionalDouble.empty());
  }
}
