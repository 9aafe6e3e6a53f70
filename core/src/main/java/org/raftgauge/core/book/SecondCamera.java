// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;

/**
 * A station's second camera, which makes height visible: one that takes photos like the first, or
 * one that measures depth.
 *
 * <p>Where it stands: a point {@code X} in the first camera's axes (x right, y down, z ahead, mm)
 * lies at {@code R X + t} in the second's.
 *
 * @param sees what its pictures show
 * @param fileMark piece of text in the paths of its pictures; without it they are the first
 *     camera's, or have {@code firstFileMark} in its place
 * @param firstFileMark piece of text in its place in the first camera's paths; may be empty
 * @param imageWidthPx width of its pictures, px
 * @param imageHeightPx height of its pictures, px
 * @param lens of the second camera, for pictures of that size
 * @param turnDeg R as a rotation vector, degrees, 3 numbers
 * @param shiftMm t, mm, 3 numbers
 */
public record SecondCamera(
    Sees sees,
    String fileMark,
    String firstFileMark,
    int imageWidthPx,
    int imageHeightPx,
    Lens lens,
    List<Double> turnDeg,
    List<Double> shiftMm) {

  /** What the pictures of a second camera show. */
  public enum Sees {
    /** A photo: height comes from how far things lie apart in both. */
    PHOTO,
    /** Depth along its axis: 16-bit grey PNG, mm, 0 where it saw none. */
    DEPTH
  }

  /** Checks the mark and the lengths. */
  public SecondCamera {
    turnDeg = List.copyOf(turnDeg);
    shiftMm = List.copyOf(shiftMm);
    if (fileMark.isBlank() || turnDeg.size() != 3 || shiftMm.size() != 3) {
      throw new IllegalArgumentException(
          "a second camera needs a file mark, 3 turns and 3 shifts, got \""
              + fileMark
              + "\", "
              + turnDeg
              + ", "
              + shiftMm);
    }
  }

  /** Returns the distance between both cameras, mm. */
  public double baselineMm() {
    double sum = 0;
    for (double mm : shiftMm) {
      sum += mm * mm;
    }
    return Math.sqrt(sum);
  }

  /**
   * Says whether a picture is the second camera's.
   *
   * @param photo its path below the photo folder, with forward slashes
   */
  public boolean took(String photo) {
    return photo.contains(fileMark);
  }

  /**
   * Returns the path that the first camera's photo of the same moment has by name, without its
   * ending.
   *
   * @param photo path of a picture that the second camera took
   * @return the path without ending
   */
  public String firstName(String photo) {
    int at = photo.lastIndexOf(fileMark);
    return stem(photo.substring(0, at) + firstFileMark + photo.substring(at + fileMark.length()));
  }

  /**
   * Returns a path without its ending.
   *
   * @param path with forward slashes
   * @return the path up to the last dot of its file name
   */
  public static String stem(String path) {
    int dot = path.lastIndexOf('.');
    return dot > path.lastIndexOf('/') ? path.substring(0, dot) : path;
  }
}
