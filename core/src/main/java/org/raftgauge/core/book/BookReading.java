// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import org.raftgauge.core.problem.Problem;

/**
 * A crop book as read, with everything that is wrong with it.
 *
 * @param book the part of it that can be used
 * @param problems all problems, file by file, errors and warnings
 */
public record BookReading(CropBook book, List<Problem> problems) {

  /** Copies the list. */
  public BookReading {
    problems = List.copyOf(problems);
  }

  /** Says whether part of the book cannot be used. */
  public boolean hasErrors() {
    return problems.stream().anyMatch(Problem::isError);
  }
}
