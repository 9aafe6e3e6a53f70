// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.table;

import java.math.BigDecimal;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.raftgauge.core.problem.Findings;

/**
 * The numbers that a field may hold.
 *
 * @param min smallest; itself allowed unless {@code aboveMin}
 * @param max largest, itself allowed
 * @param aboveMin whether the number must be above {@code min}
 */
public record NumberRange(double min, double max, boolean aboveMin) {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d*,\\d+");

  /**
   * Allows both ends.
   *
   * @param min smallest
   * @param max largest
   * @return the range
   */
  public static NumberRange from(double min, double max) {
    return new NumberRange(min, max, false);
  }

  /**
   * Allows what is above 0.
   *
   * @param max largest, itself allowed
   * @return the range
   */
  public static NumberRange aboveZero(double max) {
    return new NumberRange(0, max, true);
  }

  /**
   * Reads a number written with a dot.
   *
   * @param place where it is, for the problem
   * @param text what is written there
   * @param findings takes the problem if it is not such a number
   * @return the number, or nothing if it is not one of this range
   */
  public OptionalDouble read(String place, String text, Findings findings) {
    if (DECIMAL_COMMA.matcher(text).matches()) {
      String dotted = text.replace(',', '.');
      findings.error(place, quoted(text) + " is not a number", "write a dot, as in " + dotted);
      return OptionalDouble.empty();
    }
    if (!NUMBER.matcher(text).matches()) {
      findings.error(place, quoted(text) + " is not a number", "write a number " + this);
      return OptionalDouble.empty();
    }
    double number = Double.parseDouble(text);
    if (!has(number)) {
      findings.error(place, quoted(text) + " is out of range", "write a number " + this);
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(number);
  }

  private boolean has(double number) {
    return number <= max && (aboveMin ? number > min : number >= min);
  }

  private static String quoted(String text) {
    return "\"" + text + "\"";
  }

  /** Words the range, such as {@code from 1 to 2} or {@code above 0, at most 100}. */
  @Override
  public String toString() {
    return aboveMin
        ? "above " + plain(min) + ", at most " + plain(max)
        : "from " + plain(min) + " to " + plain(max);
  }

  private static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
