// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.measure.PhotoStatus;

/** Photos that were measured before. */
class KnownPhotosTest {
  @TempDir private Path folder;
  private RunFixture runs;

  @BeforeEach
  void makeFolders() throws IOException {
    runs = new RunFixture(folder);
  }

  @Test
  void aFolderRunTwiceMeasuresNothingAnewAndKeepsItsRowsAndPictures() throws Exception {
    runs.photo("a.txt", "rafts=R1 ruler=A2 note=the_camera_has_moved" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=R2" + RunFixture.EVENING);
    runs.run("out");
    Map<String, String> first = runs.files("out");

    RunSummary again = runs.run("out");
    Map<String, String> second = runs.files("out");

    assertEquals(2, runs.measurer.calls());
    assertEquals(2, again.photos().get(PhotoStatus.KNOWN));
    assertTrue(first.get("sites.csv").contains(",20.0,ruler,"), first.get("sites.csv"));
    assertTrue(first.get("rafts.csv").contains(",the camera has moved\r\n"));
    assertEquals(first.get("sites.csv"), second.get("sites.csv"));
    assertEquals(first.get("rafts.csv"), second.get("rafts.csv"));
    assertEquals(first.get("overlays/a.jpg"), second.get("overlays/a.jpg"));
    assertEquals(first.get("photos.csv").replace(",used,", ",known,"), second.get("photos.csv"));
  }

  @Test
  void aThirdRunElsewhereStillFindsThePictures() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.run("out");
    runs.run("out");
    runs.run("elsewhere");

    assertEquals(1, runs.measurer.calls());
    assertEquals(
        runs.files("out").get("overlays/a.jpg"), runs.files("elsewhere").get("overlays/a.jpg"));
  }

  @Test
  void picturesOfAKnownPhotoAreMadeAnewWhereTheEarlierRunIsGone() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.run("out");
    String overlay = runs.files("out").get("overlays/a.jpg");
    Files.delete(folder.resolve("out/overlays/a.jpg"));

    RunSummary again = runs.run("out2");

    assertEquals(1, again.photos().get(PhotoStatus.KNOWN));
    assertEquals(2, runs.measurer.calls());
    assertEquals(overlay, runs.files("out2").get("overlays/a.jpg"));
  }

  @Test
  void aChangedBookMeasuresAnewAndDoublesNothing() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.run("out");
    runs.measurer = new HandMadeMeasurer("other layout");

    RunSummary again = runs.run("out");

    assertEquals(1, runs.measurer.calls());
    assertEquals(1, again.photos().get(PhotoStatus.USED));
    try (History history = runs.history()) {
      assertEquals(1, history.measures().findRaft("R1").size());
    }
  }

  @Test
  void ofTwoFilesWithTheSameBytesTheSecondIsSkipped() throws Exception {
    runs.photo("a.txt", "rafts=R1" + RunFixture.EVENING);
    runs.photo("copy.txt", "rafts=R1" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(1, summary.rafts());
    assertEquals(1, summary.photos().get(PhotoStatus.SKIPPED));
    assertTrue(runs.text("out/photos.csv").contains(",skipped,the same bytes as a.txt,"));
  }
}
