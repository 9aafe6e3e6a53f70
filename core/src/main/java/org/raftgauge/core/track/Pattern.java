// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Locale;

/** How a departure spreads over the farm. */
public enum Pattern {
  /** Single sites. */
  NONE,
  /** The rim of a board differs from its middle. */
  EDGE,
  /** It grows along the board. */
  GRADIENT,
  /** A whole raft. */
  RAFT,
  /** A whole pond. */
  POND,
  /** Everything that one station saw. */
  STATION;

  /** Returns the word as written in reports. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
