// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.EnumSet;
import java.util.Set;

/** What of a lens may be fitted besides fx, cx and cy; what is not is 0, and fy equals fx. */
public enum LensTerm {
  /** A focal length of its own along y: pixels need not be square. */
  FY,
  /** First radial term. */
  K1,
  /** Second radial term. */
  K2,
  /** First tangential term. */
  P1,
  /** Second tangential term. */
  P2,
  /** Third radial term: only for wide lenses with the picture's corners well covered. */
  K3;

  /** Returns fy, k1, k2, p1 and p2: enough for all but very wide lenses (common practice). */
  public static Set<LensTerm> usual() {
    return EnumSet.of(FY, K1, K2, P1, P2);
  }
}
