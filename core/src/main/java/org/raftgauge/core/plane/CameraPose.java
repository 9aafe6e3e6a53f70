// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/**
 * A camera over a board: maps between photo px and mm of the board's frame, x along the columns, y
 * along the rows, z up from the deck.
 *
 * <p>{@code X_camera = R (x, y, -z) + t}, then the lens. The minus makes the frame right handed: x
 * right and y down as seen from above, the third axis into the deck.
 *
 * <p>Source: pinhole model, Hartley and Zisserman 2004, section 6.1.
 */
public final class CameraPose {
  private final Lens lens;
  private final double[] r;
  private final double[] t;

  private CameraPose(Lens lens, double[] r, double[] t) {
    this.lens = lens;
    this.r = r;
    this.t = t;
  }

  /**
   * Returns the pose of these parts.
   *
   * @param lens the lens, for the photo's size
   * @param rotation R, row by row, 9 numbers, a rotation to 1e-6
   * @param translationMm t, mm, 3 numbers
   * @return the pose
   * @throws IllegalArgumentException if R is no rotation or a length is wrong
   */
  public static CameraPose of(Lens lens, double[] rotation, double[] translationMm) {
    if (rotation.length != 9 || translationMm.length != 3 || !(Rotations.defect(rotation) < 1e-6)) {
      throw new IllegalArgumentException(
          "pose needs a rotation of 9 numbers and a translation of 3, got "
              + rotation.length
              + " and "
              + translationMm.length
              + " numbers or a matrix that is no rotation");
    }
    return new CameraPose(lens, rotation.clone(), translationMm.clone());
  }

  /** Returns the lens. */
  public Lens lens() {
    return lens;
  }

  /** Returns R, row by row, 9 numbers. */
  public double[] rotation() {
    return r.clone();
  }

  /** Returns t, mm, 3 numbers. */
  public double[] translationMm() {
    return t.clone();
  }

  /**
   * Projects a place over the board into the photo.
   *
   * @param xMm mm along the columns
   * @param yMm mm along the rows
   * @param zMm mm up from the deck, under the camera
   * @return its place in the photo, which may lie outside the picture
   * @throws IllegalArgumentException if the place is not in front of the camera
   */
  public PointPx toPhoto(double xMm, double yMm, double zMm) {
    double depth = r[6] * xMm + r[7] * yMm - r[8] * zMm + t[2];
    if (!(depth > 0)) {
      throw new IllegalArgumentException(
          "place must be in front of the camera, got " + xMm + ", " + yMm + ", " + zMm + " mm");
    }
    return Distortion.toPhoto(
        lens,
        (r[0] * xMm + r[1] * yMm - r[2] * zMm + t[0]) / depth,
        (r[3] * xMm + r[4] * yMm - r[5] * zMm + t[1]) / depth);
  }

  /**
   * Projects a place of the deck into the photo.
   *
   * @param p the place
   * @return its place in the photo
   */
  public PointPx toPhoto(PointMm p) {
    return toPhoto(p.xMm(), p.yMm(), 0);
  }

  /**
   * Finds the place of the deck that a photo place shows.
   *
   * @param p a photo place, px
   * @return the place where its ray meets the deck plane
   */
  public PointMm toDeck(PointPx p) {
    return toHeight(p, 0);
  }

  /**
   * Finds where the ray of a photo place meets the plane at a height over the deck.
   *
   * @param p a photo place, px
   * @param zMm height of the plane, mm up from the deck, under the camera
   * @return x and y of the meeting place
   */
  public PointMm toHeight(PointPx p, double zMm) {
    double[] ray = Distortion.toRay(lens, p);
    double[] eye = eye();
    double dx = r[0] * ray[0] + r[3] * ray[1] + r[6];
    double dy = r[1] * ray[0] + r[4] * ray[1] + r[7];
    double dw = r[2] * ray[0] + r[5] * ray[1] + r[8];
    double s = (-zMm - eye[2]) / dw;
    return new PointMm(eye[0] + s * dx, eye[1] + s * dy);
  }

  /** Returns the place of the deck plumb under the camera, the centre of parallax. */
  public PointMm foot() {
    double[] eye = eye();
    return new PointMm(eye[0], eye[1]);
  }

  /** Returns the height of the camera over the deck plane, mm. */
  public double heightMm() {
    return -eye()[2];
  }

  /** Returns the angle between the camera's axis and the plumb line, degrees. */
  public double tiltDeg() {
    return Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, r[8]))));
  }

  /**
   * Returns the magnification of a length at a height over the deck: {@code H / (H - h)}.
   *
   * @param zMm height h, mm, under the camera's height H
   * @return 1 at the deck, more above it; an area grows with its square
   */
  public double magnification(double zMm) {
    double height = heightMm();
    if (!(zMm < height)) {
      throw new IllegalArgumentException(
          "height must be under the camera's " + height + " mm, got " + zMm);
    }
    return height / (height - zMm);
  }

  /**
   * Returns the deck mm that a photo px covers at a place: the root of the area of its footprint.
   *
   * @param p a place of the deck
   * @return mm per px, above 0
   */
  public double mmPerPxAt(PointMm p) {
    PointPx centre = toPhoto(p);
    PointMm right = toDeck(new PointPx(centre.xPx() + 0.5, centre.yPx()));
    PointMm left = toDeck(new PointPx(centre.xPx() - 0.5, centre.yPx()));
    PointMm below = toDeck(new PointPx(centre.xPx(), centre.yPx() + 0.5));
    PointMm above = toDeck(new PointPx(centre.xPx(), centre.yPx() - 0.5));
    double ax = right.xMm() - left.xMm();
    double ay = right.yMm() - left.yMm();
    double bx = below.xMm() - above.xMm();
    double by = below.yMm() - above.yMm();
    return Math.sqrt(Math.abs(ax * by - ay * bx));
  }

  /** Returns the camera's place in the right handed frame (x, y, -z). */
  private double[] eye() {
    return new double[] {
      -(r[0] * t[0] + r[3] * t[1] + r[6] * t[2]),
      -(r[1] * t[0] + r[4] * t[1] + r[7] * t[2]),
      -(r[2] * t[0] + r[5] * t[1] + r[8] * t[2])
    };
  }
}
