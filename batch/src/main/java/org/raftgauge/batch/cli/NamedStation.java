// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.util.List;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;

/** Finds the station that {@code --station} names. */
final class NamedStation {

  private NamedStation() {}

  /** Finds it, or says what is wrong with its file, or which stations there are. */
  static Station of(BookReading reading, String name) throws InputException {
    return reading.book().station(name).orElseThrow(() -> none(reading, name));
  }

  private static InputException none(BookReading reading, String name) {
    List<Problem> own =
        reading.problems().stream()
            .filter(p -> p.place().startsWith("stations/" + name + ".yaml"))
            .toList();
    return new InputException(
        own.isEmpty()
            ? List.of(
                new Problem(
                    "--station " + name,
                    "is not in the book",
                    NearestSpelling.remedy(name, reading.book().stations().keySet())))
            : own);
  }
}
