// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Collects the problems that a reader comes upon, so that it can go on to the next. Of a file with
 * very many problems the first hundred are kept and the others counted. Belongs to one reading; not
 * for several threads.
 */
public final class Findings {
  /** Problems of one file that are kept: more than anybody mends in one go. */
  public static final int MOST_OF_A_FILE = 100;

  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, Crowd> files = new LinkedHashMap<>();
  private int errors;

  /** How many problems a file has, and whether one beyond the kept ones is an error. */
  private static final class Crowd {
    private int problems;
    private Severity beyond = Severity.WARNING;
  }

  /**
   * Adds a problem.
   *
   * @param problem what was found
   */
  public void add(Problem problem) {
    errors += problem.isError() ? 1 : 0;
    Crowd crowd = files.computeIfAbsent(problem.place().split(":", 2)[0], f -> new Crowd());
    crowd.problems++;
    if (crowd.problems <= MOST_OF_A_FILE) {
      problems.add(problem);
    } else if (problem.isError()) {
      crowd.beyond = Severity.ERROR;
    }
  }

  /**
   * Adds an error.
   *
   * @param place where it is
   * @param found what is wrong
   * @param remedy how to mend it
   */
  public void error(String place, String found, String remedy) {
    add(new Problem(place, found, remedy));
  }

  /**
   * Adds a warning.
   *
   * @param place where it is
   * @param found what is probably not meant
   * @param remedy how to mend it
   */
  public void warning(String place, String found, String remedy) {
    add(Problem.warning(place, found, remedy));
  }

  /**
   * Adds problems in their order.
   *
   * @param found any number of problems
   */
  public void addAll(Collection<Problem> found) {
    found.forEach(this::add);
  }

  /** Returns how many errors were added so far; warnings do not count. */
  public int errors() {
    return errors;
  }

  /** Returns the problems in the order they were added, then how many more a file has. */
  public List<Problem> list() {
    List<Problem> all = new ArrayList<>(problems);
    files.forEach(
        (file, crowd) -> {
          int more = crowd.problems - MOST_OF_A_FILE;
          if (more > 0) {
            all.add(
                new Problem(
                    file,
                    more + " more problems are not listed",
                    "mend these first, and check it again",
                    crowd.beyond));
          }
        });
    return List.copyOf(all);
  }
}
