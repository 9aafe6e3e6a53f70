// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import org.raftgauge.proving.render.Shot;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.scene.Medium;

/**
 * Everything about a photo's look that a condition sets.
 *
 * @param board the boards
 * @param light the light
 * @param shot the camera's settings
 * @param clutter number of tapes, cards and hoses
 * @param tiltDeg tilt of the camera, degrees
 */
record Look(BoardLook board, Light light, Shot shot, int clutter, double tiltDeg) {

  /** Returns the same look with other plugs. */
  Look in(Medium medium) {
    BoardLook filled =
        new BoardLook(
            board.colour(),
            board.stain(),
            board.algae(),
            board.gloss(),
            medium,
            board.netCups(),
            board.seed());
    return new Look(filled, light, shot, clutter, tiltDeg);
  }
}
