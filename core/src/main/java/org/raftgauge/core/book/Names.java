// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.raftgauge.core.problem.PlainLine;
import org.raftgauge.core.problem.Problem;

/**
 * Checks names that become parts of file names, of lists, of pages and of QR codes: letters and
 * digits of any script, spaces and a few marks, beginning with a letter or digit, so that no name
 * is a formula, a path or a tag.
 */
public final class Names {
  private static final int LONGEST = 32;
  private static final int LONGEST_SHOWN = 40;
  private static final String MARKS = "._-'()&+#\u2019\u00b7";

  /** Joiners within words of Persian and of Indian scripts. */
  private static final String JOINERS = "\u200c\u200d";

  private static final String REMEDY =
      "write at most 32 letters, digits, spaces and . - _ ' ( ) & + #, beginning with a letter or"
          + " digit";

  private Names() {}

  /**
   * Checks a name.
   *
   * @param name the name
   * @param error takes what is wrong with it, and the remedy, where it is not one
   * @return whether it is a name
   */
  static boolean check(String name, BiConsumer<String, String> error) {
    Optional<String> fault = fault(name);
    fault.ifPresent(f -> error.accept("\"" + shown(name) + "\" is not a name: " + f, REMEDY));
    return fault.isEmpty();
  }

  /**
   * Says what is wrong with a name that a person gave.
   *
   * @param place where it was given
   * @param name the name
   * @return nothing where it is a name
   */
  public static Optional<Problem> problem(String place, String name) {
    return fault(name)
        .map(f -> new Problem(place, "\"" + shown(name) + "\" is not a name: " + f, REMEDY));
  }

  /** Says whether a text is a name. */
  static boolean isName(String text) {
    return fault(text).isEmpty();
  }

  private static Optional<String> fault(String name) {
    if (name.isEmpty()) {
      return Optional.of("it is blank");
    }
    int first = name.codePointAt(0);
    if (!Character.isLetterOrDigit(first)) {
      return Optional.of("it begins with " + shownMark(first));
    }
    Optional<Integer> odd = name.codePoints().filter(c -> !isAllowed(c)).boxed().findFirst();
    if (odd.isPresent()) {
      return Optional.of(shownMark(odd.get()) + " may not stand in it");
    }
    int length = name.codePointCount(0, name.length());
    return length > LONGEST ? Optional.of("it has " + length + " characters") : Optional.empty();
  }

  private static boolean isAllowed(int c) {
    int type = Character.getType(c);
    boolean accent = type == Character.NON_SPACING_MARK || type == Character.COMBINING_SPACING_MARK;
    return Character.isLetterOrDigit(c)
        || accent
        || c == ' '
        || MARKS.indexOf(c) >= 0
        || JOINERS.indexOf(c) >= 0;
  }

  private static String shownMark(int c) {
    return c == ' ' ? "a space" : "\"" + shown(Character.toString(c)) + "\"";
  }

  /** Cuts a text short and writes out what would not show. */
  private static String shown(String text) {
    String start =
        text.codePoints()
            .limit(LONGEST_SHOWN)
            .mapToObj(Character::toString)
            .collect(Collectors.joining());
    return PlainLine.of(
        text.codePointCount(0, text.length()) > LONGEST_SHOWN ? start + "..." : start);
  }
}
