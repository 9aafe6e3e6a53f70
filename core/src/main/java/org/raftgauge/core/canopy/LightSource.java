// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/** What the light was evened on, best first. */
public enum LightSource {
  /** The board's own surface. */
  BOARD,
  /** The white about the corner markers. */
  MARKER_WHITE,
  /** Nothing: the camera's own white balance is taken as it is. */
  CAMERA
}
