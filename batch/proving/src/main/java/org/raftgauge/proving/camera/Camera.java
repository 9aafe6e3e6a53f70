// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.camera;

import org.raftgauge.core.book.Lens;

/**
 * Projects points of the world into the picture and back.
 *
 * <p>{@code X_cam = R (x, y, -z) + t} with x and y on the deck plane and z up, all mm: the flipped
 * axis makes the frame right-handed with the camera looking along +Z. Distortion: Brown 1966, in
 * the order k1 k2 p1 p2 k3. Written anew here, apart from the measuring program's own lens code, so
 * that a mistake there shows as an error and does not cancel.
 */
public final class Camera {
  private final Lens lens;
  private final int width;
  private final int height;
  private final double[] r = new double[9];
  private final double[] t = new double[3];

  /**
   * Places a camera.
   *
   * @param lens its lens
   * @param widthPx px
   * @param heightPx px
   * @param hold how it is held
   */
  public Camera(Lens lens, int widthPx, int heightPx, Hold hold) {
    this.lens = lens;
    this.width = widthPx;
    this.height = heightPx;
    turn(hold);
    double[] c = {hold.xMm(), hold.yMm(), -hold.heightMm()};
    for (int i = 0; i < 3; i++) {
      t[i] = -(r[3 * i] * c[0] + r[3 * i + 1] * c[1] + r[3 * i + 2] * c[2]);
    }
  }

  private Camera(Camera other, double[] rotation, double[] shiftMm) {
    this.lens = other.lens;
    this.width = other.width;
    this.height = other.height;
    System.arraycopy(rotation, 0, r, 0, 9);
    System.arraycopy(shiftMm, 0, t, 0, 3);
  }

  /**
   * Returns the same camera in another pose.
   *
   * @param rotation R, row by row, length 9
   * @param shiftMm t, mm, length 3
   * @return the camera
   */
  public Camera posed(double[] rotation, double[] shiftMm) {
    return new Camera(this, rotation, shiftMm);
  }

  /** R = Rx(tiltX) Ry(tiltY) Rz(-turn). */
  private void turn(Hold hold) {
    double cz = Math.cos(hold.turnRad());
    double sz = Math.sin(hold.turnRad());
    double cy = Math.cos(hold.tiltYRad());
    double sy = Math.sin(hold.tiltYRad());
    double cx = Math.cos(hold.tiltXRad());
    double sx = Math.sin(hold.tiltXRad());
    double[][] row = {{cy * cz, cy * sz, sy}, {-sz, cz, 0}, {-sy * cz, -sy * sz, cy}};
    for (int k = 0; k < 3; k++) {
      r[k] = row[0][k];
      r[3 + k] = cx * row[1][k] - sx * row[2][k];
      r[6 + k] = sx * row[1][k] + cx * row[2][k];
    }
  }

  /** Returns the lens. */
  public Lens lens() {
    return lens;
  }

  /** Returns the picture's width, px. */
  public int width() {
    return width;
  }

  /** Returns the picture's height, px. */
  public int height() {
    return height;
  }

  /** Returns one entry of R. */
  public double rotation(int row, int column) {
    return r[3 * row + column];
  }

  /** Returns one entry of t, mm. */
  public double shift(int row) {
    return t[row];
  }

  /**
   * Projects a point.
   *
   * @param x mm
   * @param y mm
   * @param z mm over the deck
   * @return x px, y px and the depth along the optical axis in mm
   */
  public double[] project(double x, double y, double z) {
    double xc = r[0] * x + r[1] * y - r[2] * z + t[0];
    double yc = r[3] * x + r[4] * y - r[5] * z + t[1];
    double zc = r[6] * x + r[7] * y - r[8] * z + t[2];
    double[] at = distort(xc / zc, yc / zc);
    return new double[] {lens.fxPx() * at[0] + lens.cxPx(), lens.fyPx() * at[1] + lens.cyPx(), zc};
  }

  private double[] distort(double x, double y) {
    double r2 = x * x + y * y;
    double radial = 1 + r2 * (lens.k1() + r2 * (lens.k2() + r2 * lens.k3()));
    return new double[] {
      x * radial + 2 * lens.p1() * x * y + lens.p2() * (r2 + 2 * x * x),
      y * radial + lens.p1() * (r2 + 2 * y * y) + 2 * lens.p2() * x * y
    };
  }

  /**
   * Finds where a pixel's ray meets a plane parallel to the deck.
   *
   * @param px picture x
   * @param py picture y
   * @param z the plane's height, mm
   * @return x and y on the plane, mm
   */
  public double[] planePoint(double px, double py, double z) {
    double xd = (px - lens.cxPx()) / lens.fxPx();
    double yd = (py - lens.cyPx()) / lens.fyPx();
    double x = xd;
    double y = yd;
    for (int k = 0; k < 12; k++) {
      double[] at = distort(x, y);
      x += xd - at[0];
      y += yd - at[1];
    }
    double dx = r[0] * x + r[3] * y + r[6];
    double dy = r[1] * x + r[4] * y + r[7];
    double dz = r[2] * x + r[5] * y + r[8];
    double cx = -(r[0] * t[0] + r[3] * t[1] + r[6] * t[2]);
    double cy = -(r[1] * t[0] + r[4] * t[1] + r[7] * t[2]);
    double cz = -(r[2] * t[0] + r[5] * t[1] + r[8] * t[2]);
    double along = (-z - cz) / dz;
    return new double[] {cx + along * dx, cy + along * dy};
  }
}
