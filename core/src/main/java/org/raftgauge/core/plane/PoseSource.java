// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

/** What a board's place in a photo was found from, best first. */
public enum PoseSource {
  /** Corner markers. */
  MARKERS,
  /** The board's own outline. */
  OUTLINE,
  /** A slot of a fixed station. */
  SLOT,
  /** The station's usual place. */
  STATION
}
