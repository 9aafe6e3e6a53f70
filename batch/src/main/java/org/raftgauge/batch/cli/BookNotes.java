// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Station;

/** Says what of a book may be a guess: nothing is wrong with it, and everything may be off. */
final class BookNotes {
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private BookNotes() {}

  /**
   * Words the guesses.
   *
   * @param book the book
   * @param now shown on the farm's clock, to be held against one on the wall
   * @return a line each
   */
  static List<String> of(CropBook book, Instant now) {
    List<String> notes = new ArrayList<>();
    for (Station station : book.stations().values()) {
      if (!station.lens().isCalibrated()) {
        notes.add(
            "station "
                + station.name()
                + ": its lens was never calibrated (no k1 to k3). By a tape its areas are off by"
                + " some per cent; where fx_px is a guess, by up to a third:"
                + " raftgauge station lens");
      }
    }
    notes.add(
        "the farm's clock is that of "
            + book.zone()
            + ", where it is now "
            + CLOCK.format(now.atZone(book.zone()))
            + "; if yours shows another time, mend time_zone in book.yaml");
    return notes;
  }
}
