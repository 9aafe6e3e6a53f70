// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/**
 * A rectangle on the deck plane.
 *
 * @param xMinMm mm
 * @param yMinMm mm
 * @param xMaxMm mm
 * @param yMaxMm mm
 */
public record Box(double xMinMm, double yMinMm, double xMaxMm, double yMaxMm) {

  /**
   * Returns the box around a mesh.
   *
   * @param mesh a mesh; an empty one gives an empty box at the origin
   * @return the box
   */
  public static Box around(Mesh mesh) {
    double x0 = mesh.vertices() == 0 ? 0 : Double.MAX_VALUE;
    double y0 = x0;
    double x1 = -x0;
    double y1 = -x0;
    for (int i = 0; i < mesh.vertices(); i++) {
      x0 = Math.min(x0, mesh.x(i));
      x1 = Math.max(x1, mesh.x(i));
      y0 = Math.min(y0, mesh.y(i));
      y1 = Math.max(y1, mesh.y(i));
    }
    return new Box(x0, y0, x1, y1);
  }

  /**
   * Grows on all sides.
   *
   * @param marginMm mm
   * @return the grown box
   */
  public Box grown(double marginMm) {
    return new Box(xMinMm - marginMm, yMinMm - marginMm, xMaxMm + marginMm, yMaxMm + marginMm);
  }

  /**
   * Says whether two boxes share a point.
   *
   * @param other the other box
   * @return true if they meet
   */
  public boolean meets(Box other) {
    return xMinMm <= other.xMaxMm
        && other.xMinMm <= xMaxMm
        && yMinMm <= other.yMaxMm
        && other.yMinMm <= yMaxMm;
  }
}
