// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.Instant;

/**
 * One photo of a raft, as far as the choice between photos of an evening needs it.
 *
 * @param photo its path
 * @param takenAt when
 * @param quality 0 (useless) to 1
 */
public record Shot(String photo, Instant takenAt, double quality) {

  /** Checks the quality. */
  public Shot {
    if (!(quality >= 0 && quality <= 1)) {
      throw new IllegalArgumentException("quality must be 0 to 1, got " + quality);
    }
  }
}
