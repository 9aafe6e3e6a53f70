// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

/** What a measured height map is from. */
public enum HeightSource {
  /** Two photos of the same moment. */
  STEREO,
  /** A depth camera. */
  DEPTH
}
