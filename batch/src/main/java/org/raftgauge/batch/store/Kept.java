// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.util.Optional;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * A photo's measure with what tells whether it still holds.
 *
 * @param measure what the measurement said (never known or replaced)
 * @param origin what made it
 * @param picturedRun the last published run whose folder holds its pictures, where there is one
 */
public record Kept(PhotoMeasure measure, Origin origin, Optional<String> picturedRun) {

  /**
   * Makes a measure that has no pictures yet.
   *
   * @param measure what the measurement said
   * @param origin what made it
   */
  public static Kept fresh(PhotoMeasure measure, Origin origin) {
    return new Kept(measure, origin, Optional.empty());
  }
}
