// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Optional;

/** Checks names that become parts of file names, of lists and of QR codes. */
final class Names {
  private static final int LONGEST = 32;

  private Names() {}

  /** Says what a name must be, where it is not so. */
  static Optional<String> remedy(String name) {
    boolean control = name.chars().anyMatch(Character::isISOControl);
    boolean odd = name.matches(".*[/\\\\;:*?\"<>|].*") || name.startsWith(".");
    return control || odd || name.length() > LONGEST
        ? Optional.of(
            "write a name of at most 32 letters, digits, spaces, dots, dashes or underscores, not"
                + " beginning with a dot")
        : Optional.empty();
  }
}
