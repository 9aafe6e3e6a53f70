// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;

/** Several photos of a raft in one evening. */
class RetakesTest {
  @TempDir private Path folder;
  private RunFixture runs;

  @BeforeEach
  void makeFolders() throws IOException {
    runs = new RunFixture(folder);
  }

  @Test
  void theBetterOfTwoPhotosOfARaftCountsAndTheOtherSaysWhy() throws Exception {
    runs.photo("blurred.txt", "rafts=R1 area=9 quality=0.4 at=2026-04-11T18:00:00+01:00");
    runs.photo("sharp.txt", "rafts=R1 area=10 quality=0.9 at=2026-04-12T00:20:00+01:00");

    RunSummary summary = runs.run("out");

    assertEquals(1, summary.photos().get(PhotoStatus.REPLACED));
    assertEquals(Optional.of(LocalDate.of(2026, 4, 11)), summary.evening());
    assertTrue(
        runs.text("out/photos.csv")
            .contains(
                ",R1,replaced,\"sharp.txt shows raft R1 better that evening (quality 0.90, this one"
                    + " 0.40)\","),
        runs.text("out/photos.csv"));
    assertFalse(runs.text("out/sites.csv").contains("blurred.txt"));
    assertFalse(runs.text("out/rafts.csv").contains("blurred.txt"));
  }

  @Test
  void aRetakeOnALaterRunReplacesTheFirstPhotoInTheHistory() throws Exception {
    runs.photo("a.txt", "rafts=R1 area=9 quality=0.4" + RunFixture.EVENING);
    runs.run("out");
    Files.delete(folder.resolve("photos/a.txt"));
    runs.photo("b.txt", "rafts=R1 area=10 quality=0.9" + RunFixture.EVENING);

    runs.run("out");

    assertEquals(List.of("a.txt replaced replaced", "b.txt used counts"), runs.settled());
  }

  @Test
  void aWorseRetakeIsReplacedByThePhotoOfTheEarlierRun() throws Exception {
    runs.photo("a.txt", "rafts=R1 area=9 quality=0.9" + RunFixture.EVENING);
    runs.run("out");
    Files.delete(folder.resolve("photos/a.txt"));
    runs.photo("b.txt", "rafts=R1 area=10 quality=0.4" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(1, summary.photos().get(PhotoStatus.REPLACED));
    assertEquals(List.of("a.txt used counts", "b.txt replaced replaced"), runs.settled());
  }

  @Test
  void theSameIdOnTwoBoardsOfAPhotoHoldsBoth() throws Exception {
    runs.photo("a.txt", "rafts=R1;R1" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(1, summary.photos().get(PhotoStatus.HELD));
    assertTrue(
        runs.text("out/photos.csv")
            .contains("R1;R1,held,raft id R1 is on two boards of one photo,"));
    assertEquals(1, summary.rafts());
    assertEquals(0, summary.totalAreaCm2());
    assertEquals(1, summary.attention().size(), summary.attention().toString());
    assertTrue(
        runs.text("out/rafts.csv").contains(",3,0,0,3,,,,,,,,,"), runs.text("out/rafts.csv"));
  }

  @Test
  void aRaftSeenAtTwoPassingStationsInOneEveningIsHeld() throws Exception {
    runs.photo("a.txt", "rafts=R1 station=north" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=R1 station=south" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(2, summary.photos().get(PhotoStatus.HELD));
    assertTrue(
        runs.text("out/photos.csv")
            .contains("raft id R1 was seen at north and south in one evening"));
  }

  @Test
  void twoPhotosOfARaftInOneEveningGiveTheRepeatability() throws Exception {
    runs.photo("a.txt", "rafts=R1 area=11 quality=0.9" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=R1 area=10 quality=0.4" + RunFixture.EVENING);
    runs.photo("c.txt", "rafts=R2" + RunFixture.EVENING);

    runs.run("out");

    // d = ln(1.1) at both sites with canopy: sqrt(2 d^2 / 4) = 0.0674.
    String[] rows = runs.text("out/rafts.csv").split("\r\n", -1);
    assertTrue(rows[0].endsWith(",reason,repeatability_ln,notes"), rows[0]);
    assertTrue(rows[1].startsWith("a.txt,bench,R1,") && rows[1].endsWith(",0.0674,"), rows[1]);
    assertTrue(rows[2].startsWith("c.txt,bench,R2,") && rows[2].endsWith(",,,"), rows[2]);
  }

  @Test
  void photosOfOneRaftThatContradictEachOtherAreSaidSo() {
    PhotoMeasure one = measured("one.txt", "rafts=R1 areas=10;20;30;5 quality=0.9");
    PhotoMeasure other = measured("other.txt", "rafts=R1 areas=140;280;420;70 quality=0.4");
    PhotoMeasure like = measured("like.txt", "rafts=R1 areas=11;21;31;5 quality=0.4");

    assertEquals(
        "two photos of this evening contradict each other: one.txt, which counts, and other.txt, in"
            + " which most plants differ by a factor of 14.0 or more; see whether both show this"
            + " raft, for one tag may be on two boards",
        doubt(one, other));
    assertEquals("", doubt(one, like));
    assertEquals("", doubt(one));
  }

  private static PhotoMeasure measured(String name, String says) {
    byte[] bytes = (says + RunFixture.EVENING).getBytes(StandardCharsets.UTF_8);
    return new HandMadeMeasurer("s").measure(bytes, PhotoFacts.of(name)).measure();
  }

  private static String doubt(PhotoMeasure... photos) {
    Farm farm = new HandMadeFarm();
    StationDoubts none = StationDoubts.of(List.of(), farm);
    return CollectSeen.of(List.of(photos), none, farm).rafts().get(0).doubt();
  }
}
