// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.site.SiteMeasure;

/** Picks plants of the sample book's raft KV-112, of which looks are made by hand. */
class PickBookTest {
  private static final Path BOOK = Path.of("..", "sample-images", "book");
  private static final OffsetDateTime EVENING = OffsetDateTime.parse("2026-03-12T18:00+01:00");

  private static SiteLook look(OffsetDateTime at, int column, double brownFraction) {
    SiteMeasure measure =
        new SiteMeasure(
            new SiteId(0, column),
            OptionalDouble.of(40 + column),
            OptionalDouble.of(1),
            OptionalDouble.of(40 + column),
            false,
            0,
            0,
            1,
            List.of(),
            List.of(new SiteMeasure.Colour(50, -20, 34, 0, brownFraction)),
            1,
            "");
    return new SiteLook("p-" + at.toLocalDate(), "bench", "KV-112", at, measure);
  }

  @Test
  void brownPlantsAreNotWeighed() throws IOException, InputException {
    List<SiteLook> looks = new ArrayList<>();
    // A1 and A2 are sound, A3 is brown tonight, A4 was and shows less of it tonight.
    double[] before = {0, 0, 0.3, 0.9};
    double[] tonight = {0, 0.1, 0.8, 0.4};
    for (int column = 0; column < 4; column++) {
      looks.add(look(EVENING.minusDays(2), column, before[column]));
      looks.add(look(EVENING, column, tonight[column]));
    }
    PickBook.Request request =
        new PickBook.Request(BOOK, "butterhead", 24, 1, EVENING.plusHours(13), BOOK);
    List<String> sites =
        PickBook.choose(CropBook.read(BOOK).book(), looks, Optional.empty(), request).stream()
            .map(c -> c.pick().candidate().site().toString())
            .toList();

    assertEquals(List.of("A1", "A2"), sites);
  }
}
