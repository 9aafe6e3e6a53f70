// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.problem;

import java.util.List;
import java.util.stream.Collectors;

/** Carries every problem found in what the user gave, for callers that cannot go on. */
public final class InputException extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  /**
   * Wraps the problems found.
   *
   * @param problems at least one problem
   */
  public InputException(List<Problem> problems) {
    super(
        problems.stream()
            .map(Problem::toString)
            .collect(Collectors.joining(System.lineSeparator())));
    this.problems = List.copyOf(problems);
  }

  /** Returns the problems, at least one. */
  public List<Problem> problems() {
    return problems;
  }
}
