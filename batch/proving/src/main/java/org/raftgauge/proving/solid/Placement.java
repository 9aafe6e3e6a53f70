// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/**
 * A place and a turn on the deck plane.
 *
 * @param xMm where the origin goes, mm
 * @param yMm where the origin goes, mm
 * @param turnRad turn from x towards y, radians
 */
public record Placement(double xMm, double yMm, double turnRad) {

  /** The place that changes nothing. */
  public static final Placement NONE = new Placement(0, 0, 0);

  /**
   * Moves a point out of the placed frame.
   *
   * @param x mm in the placed frame
   * @param y mm in the placed frame
   * @return x in the world, mm
   */
  public double worldX(double x, double y) {
    return xMm + x * Math.cos(turnRad) - y * Math.sin(turnRad);
  }

  /**
   * Moves a point out of the placed frame.
   *
   * @param x mm in the placed frame
   * @param y mm in the placed frame
   * @return y in the world, mm
   */
  public double worldY(double x, double y) {
    return yMm + x * Math.sin(turnRad) + y * Math.cos(turnRad);
  }
}
