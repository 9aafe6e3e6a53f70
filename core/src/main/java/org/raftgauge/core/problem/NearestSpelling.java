// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Guesses which known name was meant by a name that is not known. */
public final class NearestSpelling {
  private static final int MOST_NAMES_LISTED = 12;

  private NearestSpelling() {}

  /**
   * Finds the known name with the fewest slips from a name found: letters left out, put in, changed
   * or swapped with their neighbour. Upper and lower case count as equal.
   *
   * <p>Source: optimal string alignment distance (Damerau 1964, doi:10.1145/363958.363994). A name
   * is near enough at one slip, or a third of its letters; that bound is our own choice. Where none
   * is near enough, a name that begins with the one found, of three letters or more, is taken.
   *
   * @param found the name found
   * @param known the names that would be right
   * @return the nearest, the first in the alphabet of several, or nothing if none is near enough
   */
  public static Optional<String> of(String found, Collection<String> known) {
    int bound = Math.max(1, found.length() / 3);
    return known.stream()
        .filter(name -> slips(found, name) <= bound)
        .min(
            Comparator.comparingInt((String name) -> slips(found, name))
                .thenComparing(Comparator.naturalOrder()))
        .or(() -> begunBy(found, known));
  }

  private static Optional<String> begunBy(String found, Collection<String> known) {
    String start = found.toLowerCase(Locale.ROOT);
    return known.stream()
        .filter(name -> found.length() > 2 && name.toLowerCase(Locale.ROOT).startsWith(start))
        .min(Comparator.naturalOrder());
  }

  /**
   * Words the remedy for an unknown name: the nearest right spelling where there is one, and the
   * names that are known.
   *
   * @param found the name found
   * @param known the names that would be right, in the order to list them
   * @return such as {@code did you mean "basil"? known: basil, butterhead}
   */
  public static String remedy(String found, Collection<String> known) {
    if (known.isEmpty()) {
      return "none is known yet";
    }
    String listed = known.stream().limit(MOST_NAMES_LISTED).collect(Collectors.joining(", "));
    int more = known.size() - MOST_NAMES_LISTED;
    String names = "known: " + listed + (more > 0 ? " and " + more + " more" : "");
    return of(found, known).map(name -> "did you mean \"" + name + "\"? " + names).orElse(names);
  }

  private static int slips(String a, String b) {
    String left = a.toLowerCase(Locale.ROOT);
    String right = b.toLowerCase(Locale.ROOT);
    int[][] cost = new int[left.length() + 1][right.length() + 1];
    for (int i = 0; i <= left.length(); i++) {
      for (int j = 0; j <= right.length(); j++) {
        cost[i][j] = i == 0 || j == 0 ? i + j : cheapest(cost, left, right, i, j);
      }
    }
    return cost[left.length()][right.length()];
  }

  private static int cheapest(int[][] cost, String left, String right, int i, int j) {
    int change = left.charAt(i - 1) == right.charAt(j - 1) ? 0 : 1;
    int best =
        Math.min(cost[i - 1][j - 1] + change, Math.min(cost[i - 1][j] + 1, cost[i][j - 1] + 1));
    boolean swapped =
        i > 1
            && j > 1
            && left.charAt(i - 1) == right.charAt(j - 2)
            && left.charAt(i - 2) == right.charAt(j - 1);
    return swapped ? Math.min(best, cost[i - 2][j - 2] + 1) : best;
  }
}
