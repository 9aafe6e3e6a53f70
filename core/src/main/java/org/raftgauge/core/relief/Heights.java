// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

/** What came of looking for heights: a map, or why there is none. */
public sealed interface Heights permits HeightMap, NoHeights {}
