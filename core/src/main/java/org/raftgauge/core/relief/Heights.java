// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.OptionalDouble;

/** What came of looking for heights: a map, or why there is none. */
public sealed interface Heights permits HeightMap, NoHeights {

  /**
   * Returns by how many px things lie lower in the second camera's rectified photo than in the
   * first's: near 0 while both cameras sit as they were calibrated; empty where it was not told.
   */
  OptionalDouble rowsPx();
}
