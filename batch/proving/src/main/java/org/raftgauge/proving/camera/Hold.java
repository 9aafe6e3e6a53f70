// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.camera;

/**
 * How a camera is held.
 *
 * @param xMm the point on the deck plane straight under it, mm
 * @param yMm the point on the deck plane straight under it, mm
 * @param heightMm over the deck plane, above 0
 * @param turnRad how far the picture's x axis is turned from the deck's, radians
 * @param tiltXRad tilt about the picture's x axis, radians
 * @param tiltYRad tilt about the picture's y axis, radians
 */
public record Hold(
    double xMm, double yMm, double heightMm, double turnRad, double tiltXRad, double tiltYRad) {

  /** Checks that the height is above 0. */
  public Hold {
    if (!(heightMm > 0)) {
      throw new IllegalArgumentException("heightMm must be > 0, got " + heightMm);
    }
  }
}
