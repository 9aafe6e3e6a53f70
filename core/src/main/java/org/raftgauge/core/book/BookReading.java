// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import org.raftgauge.core.problem.Problem;

/**
 * A crop book as read, with everything that is wrong with it.
 *
 * @param book the part of it that can be used
 * @param problems all problems, file by file, errors and warnings
 * @param rafts the rafts that plantings and events name, those too of rows that cannot be used
 */
public record BookReading(CropBook book, List<Problem> problems, Known rafts) {

  /** Copies the list. */
  public BookReading {
    problems = List.copyOf(problems);
  }

  /** Says whether part of the book cannot be used. */
  public boolean hasErrors() {
    return problems.stream().anyMatch(Problem::isError);
  }
}
