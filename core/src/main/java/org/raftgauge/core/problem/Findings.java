// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * Collects the problems that a reader comes upon, so that it can go on to the next. Belongs to one
 * reading; not for several threads.
 */
public final class Findings {
  private final List<Problem> problems = new ArrayList<>();
  private int errors;

  /**
   * Adds a problem.
   *
   * @param problem what was found
   */
  public void add(Problem problem) {
    problems.add(problem);
    errors += problem.isError() ? 1 : 0;
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

  /** Returns a copy of all problems, in the order they were added. */
  public List<Problem> list() {
    return List.copyOf(problems);
  }
}
