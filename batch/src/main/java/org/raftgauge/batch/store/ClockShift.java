// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads and writes by how much a clock was wrong: {@code +1:00}, {@code -26:30:05}. */
public final class ClockShift {
  private static final Pattern SHIFT =
      Pattern.compile("([+-])(\\d{1,6}):([0-5]\\d)(?::([0-5]\\d))?");

  private ClockShift() {}

  /**
   * Reads.
   *
   * @param text sign, hours, minutes and perhaps seconds
   * @return the shift; nothing where the text is none, or shifts by nothing
   */
  public static Optional<Duration> parse(String text) {
    Matcher match = SHIFT.matcher(text);
    if (!match.matches()) {
      return Optional.empty();
    }
    int seconds = match.group(4) == null ? 0 : Integer.parseInt(match.group(4));
    Duration size =
        Duration.ofHours(Long.parseLong(match.group(2)))
            .plusMinutes(Long.parseLong(match.group(3)))
            .plusSeconds(seconds);
    Duration shift = match.group(1).equals("-") ? size.negated() : size;
    return shift.isZero() ? Optional.empty() : Optional.of(shift);
  }

  /**
   * Writes.
   *
   * @param shift whole seconds
   * @return the text that {@link #parse} reads
   */
  public static String text(Duration shift) {
    Duration size = shift.abs();
    String minutes =
        String.format(
            Locale.ROOT,
            "%s%d:%02d",
            shift.isNegative() ? "-" : "+",
            size.toHours(),
            size.toMinutesPart());
    return size.toSecondsPart() == 0
        ? minutes
        : minutes + String.format(Locale.ROOT, ":%02d", size.toSecondsPart());
  }
}
