// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.CropBook;

/** What the sample book's events.csv says, in the words of a raft's diary. */
class DiaryEventsTest {
  private static final CropBook BOOK = CropBook.read(Path.of("../sample-images/book")).book();

  @Test
  void aMoveOnTheSameRaftNamesBothSites() {
    assertEquals(List.of("12 Mar 2026: E4 moved to C2"), words("KV-112", 10, 14));
  }

  @Test
  void whatWasTakenIsNamedAndAWholeRaftIsAllPlants() {
    assertEquals(List.of("15 Mar 2026: C4 harvested"), words("KV-118", 14, 18));
    assertEquals(List.of("19 Mar 2026: all plants harvested"), words("KV-204", 16, 20));
  }

  @Test
  void onlyWhatHappenedBetweenTheEveningsIsSaid() {
    assertEquals(List.of(), words("KV-112", 12, 14));
    assertEquals(List.of(), words("KV-112", 4, 11));
    assertEquals(List.of(), words("KV-202", 1, 31));
  }

  private static List<String> words(String raft, int since, int until) {
    return DiaryEvents.words(
        BOOK, raft, LocalDate.of(2026, 3, since), LocalDate.of(2026, 3, until));
  }
}
