// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.history.SiteLook;

class KnownLooksTest {
  private static final LocalDate EVENING = LocalDate.of(2026, 4, 12);

  private final List<Instant> read = new ArrayList<>();
  private final KnownLooks looks =
      new KnownLooks(
          List.of(exclusion(1, "2026-04-13T03:59:00Z"), exclusion(2, "2026-04-20T12:00:00Z")),
          new FarmDay(ZoneId.of("UTC"), LocalTime.of(4, 0)),
          by -> {
            read.add(by);
            return new ArrayList<>();
          });

  private static Correction exclusion(int number, String at) {
    return new Correction(
        number,
        new Correction.Entry(OffsetDateTime.parse(at), "Ana", "test"),
        new Correction.Exclude(new Correction.Photo("" + number, number + ".jpg")));
  }

  @Test
  void anEveningSeesWhatWasCorrectedByItsEnd() {
    List<SiteLook> before = looks.on(EVENING.minusDays(1));
    List<SiteLook> first = looks.on(EVENING);
    // The farm's day ends at 04:00: one minute after the first correction.
    assertEquals(
        List.of(Instant.parse("2026-04-12T04:00:00Z"), Instant.parse("2026-04-13T04:00:00Z")),
        read);
    assertSame(first, looks.on(EVENING.plusDays(3)));
    assertSame(before, looks.on(EVENING.minusDays(9)));
    assertEquals(2, read.size());
    looks.on(EVENING.plusDays(8));
    assertEquals(Instant.parse("2026-04-21T04:00:00Z"), read.get(2));
  }

  @Test
  void whatWasReadAlreadyIsNotReadAgain() {
    List<SiteLook> tonight = new ArrayList<>();
    assertSame(tonight, looks.with(Instant.MAX, tonight).on(EVENING.plusDays(30)));
    assertEquals(List.of(), read);
  }
}
