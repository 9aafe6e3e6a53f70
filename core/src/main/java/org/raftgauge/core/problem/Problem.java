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
 */
public record Problem(String place, String found, String remedy) {

  /** Checks that no part is missing. */
  public Problem {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(found, "found");
    Objects.requireNonNull(remedy, "remedy");
  }

  /** Says the problem in one line: place, what was found, remedy. */
  @Override
  public String toString() {
    return place + ": " + found + "; " + remedy;
  }
}
