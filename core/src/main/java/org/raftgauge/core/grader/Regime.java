// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.Locale;

/** Which traits of a site can be trusted. */
public enum Regime {
  /** Its own outline is seen: the area tells the weight. */
  OPEN,
  /** Its canopy has closed with its neighbours': the area is a lower bound and tells little. */
  CLOSED;

  /** Returns the name in files, such as {@code open}. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * Returns the regime of a site.
   *
   * @param closed whether it is closed
   * @return {@code CLOSED} if so
   */
  public static Regime of(Boolean closed) {
    return closed ? CLOSED : OPEN;
  }
}
