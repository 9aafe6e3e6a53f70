// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;

class StandLossTest {
  private static final LocalDate START = LocalDate.of(2027, 3, 1);

  @TempDir private Path folder;

  private CropBook book() {
    return new GrowingRafts(folder)
        .plant("A", START, Optional.empty())
        .file(
            "events.csv",
            "at,kind,raft,site,to_raft,to_site,by,note\n2027-03-11T04:00,died,A,A1,,,,\n")
        .book();
  }

  @Test
  void plantsThatDiedCountAgainstTheDaysThatAllStood() {
    Instant end = Instant.parse("2027-03-21T04:00:00Z");
    StandLoss loss = StandLoss.of(book().plants(), Set.of(), end);

    // Nine plants of 20 days, one of 10: 190 plant days, one loss;
    // (1 + 0.5) / (190 + 0.5 / 0.0005) a day.
    assertEquals(Math.exp(-5 * 1.5 / 1190), loss.standing("batavia", 5), 1e-9);
  }

  @Test
  void aPlantFoundBareIsLostToo() {
    Instant end = Instant.parse("2027-03-21T04:00:00Z");
    StandLoss loss = StandLoss.of(book().plants(), Set.of("A/A2/2027-03-01"), end);

    assertEquals(Math.exp(-5 * 2.5 / 1190), loss.standing("batavia", 5), 1e-9);
  }

  @Test
  void aCropWithoutAHistoryLosesAsUsual() {
    StandLoss loss = StandLoss.of(book().plants(), Set.of(), Instant.parse("2027-03-21T04:00:00Z"));

    // Half a loss in a thousand plant days.
    assertEquals(Math.exp(-10 * 0.0005), loss.standing("basil", 10), 1e-12);
  }
}
