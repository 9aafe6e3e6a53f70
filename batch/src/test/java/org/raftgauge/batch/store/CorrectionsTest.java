// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.TextPhotos;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;

class CorrectionsTest {
  private static final LocalDate DAY = LocalDate.of(2026, 4, 11);

  @TempDir private Path folder;

  private final Kept first = TextPhotos.kept("a.jpg", 11, "rafts=R1 area=10");
  private final Kept second = TextPhotos.kept("b.jpg", 11, "rafts=R2 area=20");
  private History history;

  @BeforeEach
  void open() throws IOException {
    history = History.open(folder.resolve("history.db"));
    history.save(List.of(first, second));
  }

  @AfterEach
  void close() throws IOException {
    history.close();
  }

  @Test
  void anExcludedPhotoIsNoLongerFoundButStaysAsMeasured() throws IOException {
    enter("2026-04-12T08:00:00Z", new Correction.Exclude(photo(first)));

    assertEquals(List.of(), history.measures().findRaft("R1"));
    assertEquals(List.of("b.jpg"), names(history.measures().takenBetween(DAY, DAY)));
    assertEquals(List.of(), history.measures().takenBetween(new RaftDays("R1", DAY, DAY)));
    assertEquals(1, history.measures().stationPast("bench").size());
    assertEquals(Optional.of(first), history.find(first.measure().sha256()));
    PhotoMeasure said = history.measures().corrections().apply(first.measure());
    assertEquals(PhotoStatus.SKIPPED, said.status());
    assertEquals("correction 1 (2026-04-12, Ana) excludes a.jpg: test", said.reason());
    assertEquals("to take that back: raftgauge amend undo 1", said.remedy());
  }

  @Test
  void aMovedPhotoIsFoundUnderTheOtherRaftOnly() throws IOException {
    enter("2026-04-12T08:00:00Z", new Correction.Move(photo(first), "R1", "R9"));

    Measures measures = history.measures();
    assertEquals(List.of(), measures.findRaft("R1"));
    assertEquals(List.of("a.jpg"), names(measures.findRaft("R9")));
    assertEquals(List.of("a.jpg"), names(measures.takenBetween(new RaftDays("R9", DAY, DAY))));
    assertEquals(List.of(), measures.takenBetween(new RaftDays("R1", DAY, DAY)));
    assertEquals(
        List.of("correction 1 (2026-04-12, Ana) moves raft R1 on a.jpg to raft R9: test"),
        measures.findRaft("R9").get(0).measure().rafts().get(0).notes());
    assertEquals(Optional.of(first), history.find(first.measure().sha256()));
  }

  @Test
  void aMendedTimeMovesThePhotoToAnotherDay() throws IOException {
    enter("2026-04-12T08:00:00Z", new Correction.Clock(photo(first), Duration.ofDays(-1)));

    Measures measures = history.measures();
    LocalDate before = DAY.minusDays(1);
    assertEquals(List.of("a.jpg"), names(measures.takenBetween(before, before)));
    assertEquals(List.of("b.jpg"), names(measures.takenBetween(DAY, DAY)));
    assertEquals(
        List.of(
            OffsetDateTime.parse("2026-04-10T18:00:00+01:00"),
            OffsetDateTime.parse("2026-04-11T18:00:00+01:00")),
        measures.stationPast("bench").stream().map(StationPast.Photo::takenAt).toList());
  }

  @Test
  void whatWasEnteredLaterIsNotSeen() throws IOException {
    enter("2026-04-12T08:00:00Z", new Correction.Exclude(photo(first)));

    Instant entered = Instant.parse("2026-04-12T08:00:00Z");
    assertEquals(1, history.measures(entered).findRaft("R1").size());
    assertEquals(0, history.measures(entered.plusNanos(1)).findRaft("R1").size());
  }

  @Test
  void anUndoneCorrectionHoldsUntilItsUndoingAndAgainAfterThatIsUndone() throws IOException {
    enter("2026-04-12T08:00:00Z", new Correction.Exclude(photo(first)));
    enter("2026-04-13T08:00:00Z", new Correction.Undo(1));
    enter("2026-04-14T08:00:00Z", new Correction.Undo(2));

    List<Integer> found = new ArrayList<>();
    for (int day = 12; day <= 15; day++) {
      Instant by = Instant.parse("2026-04-" + day + "T00:00:00Z");
      found.add(history.measures(by).findRaft("R1").size());
    }
    assertEquals(List.of(1, 0, 1, 0), found, "before; excluded; undone; excluded again");
    assertEquals(3, history.corrections().size(), "no row is ever taken away");
  }

  @Test
  void correctionsComeBackAsTheyWereEntered() throws IOException {
    List<Correction.Change> changes =
        List.of(
            new Correction.Exclude(photo(first)),
            new Correction.Move(photo(second), "", "R9"),
            new Correction.Clock(photo(second), Duration.ofSeconds(-5025)),
            new Correction.Undo(2));
    for (Correction.Change change : changes) {
      enter("2026-04-12T08:00:00+01:00", change);
    }

    List<Correction> read = history.corrections();
    assertEquals(changes, read.stream().map(Correction::change).toList());
    assertEquals(List.of(1, 2, 3, 4), read.stream().map(Correction::number).toList());
    assertTrue(read.get(2).words().contains("shifts the time of b.jpg by -1:23:45"));
  }

  @Test
  void severalAreEnteredTogetherOrNotAtAll() throws IOException {
    Correction.Entry entry = entry("2026-04-12T08:00:00Z");
    List<Correction> entered =
        history.correct(
            List.of(
                new Correction(0, entry, new Correction.Exclude(photo(first))),
                new Correction(0, entry, new Correction.Exclude(photo(second)))));

    assertEquals(List.of(1, 2), entered.stream().map(Correction::number).toList());
    assertEquals(entered, history.corrections());
  }

  @Test
  void shiftsAreReadAsTheyAreWritten() {
    for (String text : List.of("+1:00", "-26:30", "+0:03:20", "-0:00:01")) {
      assertEquals(text, ClockShift.text(ClockShift.parse(text).orElseThrow()));
    }
    for (String text : List.of("1:00", "+1", "+0:00", "+1:60", "+1:00:60", "", "+ 1:00")) {
      assertEquals(Optional.empty(), ClockShift.parse(text), text);
    }
  }

  private void enter(String at, Correction.Change change) throws IOException {
    history.correct(List.of(new Correction(0, entry(at), change)));
  }

  private static Correction.Entry entry(String at) {
    return new Correction.Entry(OffsetDateTime.parse(at), "Ana", "test");
  }

  private static Correction.Photo photo(Kept kept) {
    return new Correction.Photo(kept.measure().sha256(), kept.measure().photo());
  }

  private static List<String> names(List<Kept> photos) {
    return photos.stream().map(k -> k.measure().photo()).toList();
  }

  @Test
  void photosSavedAfterAReadingAreFoundByTheNext() throws IOException {
    Measures measures = history.measures();
    assertEquals(List.of("a.jpg", "b.jpg"), names(measures.takenBetween(DAY, DAY)));
    history.save(List.of(TextPhotos.kept("c.jpg", 11, "rafts=R3 area=30")));
    assertEquals(3, measures.takenBetween(DAY, DAY).size());
    try (History other = History.open(folder.resolve("history.db"))) {
      other.save(List.of(TextPhotos.kept("d.jpg", 11, "rafts=R4 area=40")));
    }
    assertEquals(4, measures.takenBetween(DAY, DAY).size());
    assertEquals(List.of(), measures.takenBetween(DAY.plusDays(1), DAY.plusDays(9)));
  }
}
