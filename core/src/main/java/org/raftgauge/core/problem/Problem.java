// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import java.util.Objects;

/**
 * Describes one thing that is wrong with something the user gave: where it is, what is wrong, and
 * how to mend it.
 *
 * @param place where: a file, with {@code :line:column} where known, then the field; never blank
 * @param found what is wrong, with the value found in double quotes; never blank
 * @param remedy what is allowed and how to mend it; never blank
 * @param severity how much it stops
 */
public record Problem(String place, String found, String remedy, Severity severity) {

  /** Checks that no part is missing. */
  public Problem {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(found, "found");
    Objects.requireNonNull(remedy, "remedy");
    Objects.requireNonNull(severity, "severity");
  }

  /**
   * Describes an error.
   *
   * @param place where it is
   * @param found what is wrong
   * @param remedy how to mend it
   */
  public Problem(String place, String found, String remedy) {
    this(place, found, remedy, Severity.ERROR);
  }

  /**
   * Describes a warning.
   *
   * @param place where it is
   * @param found what is probably not meant
   * @param remedy how to mend it
   * @return the problem
   */
  public static Problem warning(String place, String found, String remedy) {
    return new Problem(place, found, remedy, Severity.WARNING);
  }

  /** Says whether what depends on it cannot be used. */
  public boolean isError() {
    return severity == Severity.ERROR;
  }

  /**
   * Says the problem in one line: place, what was found, remedy; what would not show is written
   * out.
   */
  @Override
  public String toString() {
    return PlainLine.of(place + ": " + found + "; " + remedy);
  }
}
