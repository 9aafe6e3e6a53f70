// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;

/**
 * Told before each step that changes the disk. What throws here stands for a disk that refuses the
 * step; what stops here, for a machine that stops.
 */
public interface Steps {

  /** Does nothing. */
  Steps NONE = step -> {};

  /**
   * Told of a step.
   *
   * @param step what comes next
   * @throws IOException to fail the step
   */
  void before(Step step) throws IOException;
}
