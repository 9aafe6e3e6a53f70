// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A flat target of known size for lens calibration.
 *
 * @param shape what is printed on it
 * @param columns squares or circles side by side (of staggered circles: columns of the whole grid,
 *     each filled in every second row)
 * @param rows squares or circles below each other
 * @param sizeMm side of a square or diameter of a circle, mm, above 0
 * @param pitchMm distance between the centres of neighbours, mm; of a chessboard its square
 */
public record CalibrationTarget(Shape shape, int columns, int rows, double sizeMm, double pitchMm) {
  private static final Pattern TEXT =
      Pattern.compile("([a-z-]+):(\\d{1,3})x(\\d{1,3}):(\\d+(?:\\.\\d+)?)(?::(\\d+(?:\\.\\d+)?))?");

  /** What may be printed on a target. */
  public enum Shape {
    /** Black and white squares corner to corner. */
    CHESSBOARD,
    /** Black squares in rows and columns, apart from each other. */
    SQUARES,
    /** Black circles in rows and columns. */
    CIRCLES,
    /** Black circles, every second row shifted by half a column. */
    STAGGERED_CIRCLES;

    /** Returns the name used in the text form: {@code staggered-circles}. */
    public String text() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Checks the sizes. */
  public CalibrationTarget {
    if (columns < 2 || rows < 2 || columns > 200 || rows > 200) {
      throw new IllegalArgumentException(
          "a target has 2 to 200 columns and rows, got " + columns + " x " + rows);
    }
    if (!(sizeMm > 0) || !(pitchMm >= sizeMm) || !Double.isFinite(pitchMm)) {
      throw new IllegalArgumentException(
          "a target's size must be > 0 mm and its pitch no less, got " + sizeMm + ", " + pitchMm);
    }
    if ((shape == Shape.CHESSBOARD) != (pitchMm == sizeMm)) {
      throw new IllegalArgumentException(
          "only a chessboard's pitch equals its size, got " + shape.text() + ", " + pitchMm);
    }
  }

  /**
   * Reads a target from its text form: {@code chessboard:COLUMNSxROWS:SQUARE_MM}, {@code
   * squares:COLUMNSxROWS:SIDE_MM:PITCH_MM}, {@code circles:COLUMNSxROWS:DIAMETER_MM:PITCH_MM} or
   * {@code staggered-circles:...} alike. A chessboard's columns and rows are counted in squares.
   *
   * @param text the text form
   * @return the target; empty where the text is none
   */
  public static Optional<CalibrationTarget> parse(String text) {
    Matcher m = TEXT.matcher(text.strip());
    if (!m.matches()) {
      return Optional.empty();
    }
    Optional<Shape> shape =
        Arrays.stream(Shape.values()).filter(s -> s.text().equals(m.group(1))).findFirst();
    boolean pitched = m.group(5) != null;
    if (shape.isEmpty() || pitched == (shape.get() == Shape.CHESSBOARD)) {
      return Optional.empty();
    }
    double size = Double.parseDouble(m.group(4));
    double pitch = pitched ? Double.parseDouble(m.group(5)) : size;
    try {
      return Optional.of(
          new CalibrationTarget(
              shape.get(),
              Integer.parseInt(m.group(2)),
              Integer.parseInt(m.group(3)),
              size,
              pitch));
    } catch (IllegalArgumentException outOfRange) {
      return Optional.empty();
    }
  }

  /** Returns the text form. */
  @Override
  public String toString() {
    String start = shape.text() + ":" + columns + "x" + rows + ":" + plain(sizeMm);
    return shape == Shape.CHESSBOARD ? start : start + ":" + plain(pitchMm);
  }

  private static String plain(double mm) {
    return mm == Math.rint(mm) ? Long.toString((long) mm) : Double.toString(mm);
  }
}
