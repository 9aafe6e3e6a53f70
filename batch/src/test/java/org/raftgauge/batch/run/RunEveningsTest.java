// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.measure.PhotoStatus;

/** Which evenings a run is of, and which rafts were missing on them. */
class RunEveningsTest {
  @TempDir private Path folder;
  private RunFixture runs;

  @BeforeEach
  void makeFolders() throws IOException {
    runs = new RunFixture(folder);
  }

  @Test
  void aPhotoFromTheFutureIsMeasuredAndNotTakenForTheLatestEvening() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=R2 at=2031-04-11T18:00:00+01:00");

    RunSummary summary = runs.run("out");

    assertEquals(Optional.of(LocalDate.parse("2026-04-11")), summary.evening());
    assertEquals(2, summary.photos().get(PhotoStatus.USED));
    assertEquals(
        List.of(
            "photos of 2031-04-11 are dated in the future: measured and kept, not taken for"
                + " tonight; set the camera's clock, and give taken_at in manifest.csv"),
        summary.notes());
    runs.run("out");
    assertEquals(2, runs.measurer.calls(), "each once");
  }

  @Test
  void whereAllPhotosAreFromTheFutureTheLatestOfThemIsTonight() throws Exception {
    runs.photo("b.txt", "rafts=R2 at=2031-04-11T18:00:00+01:00");
    assertEquals(Optional.of(LocalDate.parse("2031-04-11")), runs.run("out").evening());
  }

  @Test
  void aRaftOfTwoEveningsCountsOnceAsOnTheLatest() throws Exception {
    runs.photo("b.txt", "rafts=R1 area=20 at=2026-04-12T18:00:00+01:00");
    RunSummary latest = runs.run("latest");
    runs.photo("a.txt", "rafts=R1 area=10" + RunFixture.EVENING);
    RunSummary both = runs.run("both");

    assertEquals(1, both.rafts());
    assertEquals(latest.sites(), both.sites());
    assertTrue(both.totalAreaCm2() > 0);
    assertEquals(latest.totalAreaCm2(), both.totalAreaCm2());
  }

  @Test
  void expectedRaftsThatNoPhotoShowsAreNamed() throws Exception {
    runs.photo("a.txt", "rafts=R2" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(List.of("R1", "R3"), List.copyOf(summary.notPhotographed()));
    assertTrue(
        runs.text("out/run.json")
            .contains("\"rafts_not_photographed\": [\n    \"R1\",\n    \"R3\"\n  ]"));
  }

  @Test
  void aRaftWhoseOnlyPhotoIsExcludedIsMissing() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=R2" + RunFixture.EVENING);
    runs.run("out");
    try (History history = runs.history()) {
      String sha256 = history.named("a.txt").get(0).measure().sha256();
      Correction.Entry entry =
          new Correction.Entry(OffsetDateTime.parse("2026-04-12T06:00:00+01:00"), "Ana", "hand");
      history.correct(
          List.of(
              new Correction(
                  0, entry, new Correction.Exclude(new Correction.Photo(sha256, "a.txt")))));
    }
    assertEquals(List.of("R1", "R3"), List.copyOf(runs.run("out").notPhotographed()));
  }

  @Test
  void overManyEveningsItIsSaidForEachWhichRaftsAreMissing() throws Exception {
    runs.photo("a.txt", "rafts=R2 at=2026-04-10T18:00:00+01:00");
    runs.photo("b.txt", "rafts=R1;R2" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(Optional.of(LocalDate.of(2026, 4, 11)), summary.evening());
    assertEquals(List.of("R3"), List.copyOf(summary.notPhotographed()), "on the last evening");
    assertEquals("{2026-04-10=[R1, R3], 2026-04-11=[R3]}", summary.missing().toString());
    assertTrue(
        runs.text("out/run.json").contains("\"2026-04-10\": [\n"), runs.text("out/run.json"));
  }
}
