// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import org.raftgauge.proving.render.Shot;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Light;

/**
 * Everything about a photo's look that a condition sets.
 *
 * @param board the boards
 * @param light the light
 * @param shot the camera's settings
 * @param clutter number of tapes, cards and hoses
 * @param tiltDeg tilt of the camera, degrees
 */
record Look(BoardLook board, Light light, Shot shot, int clutter, double tiltDeg) {}
