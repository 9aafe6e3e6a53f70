// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.core.measure.PhotoStatus;

/** The tables and pictures of a run, byte for byte. */
class RunTablesTest {
  @TempDir private Path folder;
  private RunFixture runs;

  @BeforeEach
  void makeFolders() throws IOException {
    runs = new RunFixture(folder);
  }

  @Test
  void tablesHaveTheseBytes() throws Exception {
    runs.photo("tonight/a.txt", "rafts=R1 area=10" + RunFixture.EVENING);

    runs.run("out");

    // SHA-256 of the photo's text: printf 'rafts=R1 area=10 at=2026-04-11T18:00:00+01:00' |
    // sha256sum
    assertEquals(
        "photo,sha256,station,taken_at,rafts,status,reason,remedy,mm_per_px,pose_error_mm,sharpness,"
            + "exposure_clipped_fraction,light_cast,clock_doubt,camera_height_mm,shift_right_px,"
            + "shift_down_px,turn_deg,edge_blur_px,haze_fraction,board_light,light_across_ln,light_down_ln,vignetting_fraction,pair_rows_px\r\n"
            + "tonight/a.txt,"
            + Digest.of(Files.readAllBytes(folder.resolve("photos/tonight/a.txt")))
            + ",bench,2026-04-11T18:00:00+01:00,R1,used,,,0.5000,0.41,0.910,0.0123,,,1600.0,,,,,,,,,,\r\n",
        runs.text("out/photos.csv"));
    // Days after transplant: 2026-04-06 to 2026-04-11 18:00 local is 5.75.
    String site =
        ",2026-04-11T18:00:00+01:00,5.750,%s,%s,%s,false,0.000,20.0,model,0.9500,%s,markers,0.800,,,,,,0.00\r\n";
    String traits = "35.7,40.0,130.0,0.900,-1.3,2.0,55.0,-31.0,34.0,0.010,0.000";
    String start = "tonight/a.txt,bench,R1,P1,butterhead,,L1,";
    assertEquals(
        start
            + "A1,R1/A1"
            + String.format(site, "10.00", "0.20", "10.00", traits)
            + start
            + "A2,R1/A2"
            + String.format(site, "20.00", "0.40", "20.00", traits)
            + start
            + "B1,R1/B1"
            + String.format(site, "0.00", "0.00", "0.00", ",,,,,,,,,,"),
        runs.text("out/sites.csv").replaceFirst("^[^\n]*\n", ""));
    // Sites with canopy: 10 and 20; sum 30, median 15, 10th 11, 90th 19; sd 7.0711 / 15 = 0.4714.
    assertEquals(
        "tonight/a.txt,bench,R1,P1,1,butterhead,L1,2026-04-11T18:00:00+01:00,5.750,3,1,0,0,0.2500,"
            + "30.00,15.00,11.00,19.00,0.4714,1.50,,markers,0.41,0.5000,0.900,,,\r\n",
        runs.text("out/rafts.csv").replaceFirst("^[^\n]*\n", ""));
  }

  @Test
  void theNumberOfWorkersChangesNoByte() throws Exception {
    for (int i = 0; i < 12; i++) {
      runs.photo(
          "p" + i + ".txt",
          "rafts=R" + i % 3 + " area=" + (i + 1) + " quality=0." + (i + 10) + RunFixture.EVENING);
    }
    runs.workers = 1;
    runs.run("one");
    Files.delete(folder.resolve("book/history.db"));
    runs.workers = 4;
    runs.run("four");

    Map<String, String> one = runs.files("one");
    Map<String, String> four = runs.files("four");
    assertTrue(one.remove("run.json").contains("\"workers\": 1"));
    assertTrue(four.remove("run.json").contains("\"workers\": 4"));
    assertEquals(one, four);
    assertEquals(33, one.size(), "six tables, three of ponds, twelve overlays and their boards");
  }

  @Test
  void rowsOfAnUnknownRaftAreKeptAndAskedAbout() throws Exception {
    runs.photo("a.txt", "rafts=R9" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=?" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(0, summary.rafts(), "the book has neither of them");
    assertEquals(0, summary.sites());
    assertEquals(0, summary.totalAreaCm2());
    assertEquals(
        List.of(
            new Unassigned(
                "a.txt",
                Optional.of("R9"),
                "raft R9 has no planting on 2026-04-11",
                "mend plantings.csv"),
            new Unassigned(
                "b.txt",
                Optional.empty(),
                "nothing tells which raft this is",
                "name it in the manifest")),
        summary.unassigned());
    assertEquals(
        List.of(
            "a.txt: unassigned: raft R9 has no planting on 2026-04-11; mend plantings.csv",
            "b.txt: unassigned: nothing tells which raft this is; name it in the manifest"),
        summary.attention());
    assertTrue(
        runs.text("out/photos.csv")
            .contains(
                ",R9,used,unassigned: raft R9 has no planting on 2026-04-11,mend plantings.csv,"),
        runs.text("out/photos.csv"));
    assertTrue(
        runs.text("out/rafts.csv")
            .contains("unassigned: raft R9 has no planting on 2026-04-11; mend plantings.csv"));
    assertTrue(
        runs.text("out/rafts.csv")
            .contains("unassigned: nothing tells which raft this is; name it in the manifest"));
  }

  @Test
  void aPhotoThatTheProgramFailsOnIsARowAndIsTriedAgain() throws Exception {
    runs.photo("a.txt", "boom=1 rafts=R1" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=R2" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");
    runs.run("out");

    assertEquals(3, runs.measurer.calls(), "the failed photo twice, the other once");
    assertEquals(1, summary.photos().get(PhotoStatus.REFUSED));
    assertTrue(
        runs.text("out/photos.csv")
            .contains(
                ",refused,the program failed on this photo: java.lang.IllegalStateException:"
                    + " boom,\"run again; if it fails again, take the photo again and report this"
                    + " line\","));
    assertEquals(List.of("a.txt", "a.txt"), runs.progress.failed());
  }

  @Test
  void aPhotoThatRunsTheMemoryOutIsARowAndTheOthersAreMeasured() throws Exception {
    runs.photo("a.txt", "huge=1 rafts=R1" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=R2" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(1, summary.photos().get(PhotoStatus.USED));
    assertTrue(
        runs.text("out/photos.csv")
            .contains(
                ",refused,the memory ran out on this photo,\"run again with --workers 1; if it"
                    + " fails again, set the camera to fewer megapixels, or use a computer with"
                    + " more memory\","));
  }

  @Test
  void canopyPicturesHoldCoverageAndOwner() throws Exception {
    runs.photo("a.txt", "rafts=R1;R2" + RunFixture.EVENING);
    runs.pictures = EnumSet.of(RunPictures.Kind.CANOPY);

    runs.run("out");

    assertEquals(
        List.of("canopy/a.coverage.png", "canopy/a.site.png"),
        runs.files("out").keySet().stream().filter(f -> f.startsWith("canopy")).toList());
    var site = javax.imageio.ImageIO.read(folder.resolve("out/canopy/a.site.png").toFile());
    var coverage = javax.imageio.ImageIO.read(folder.resolve("out/canopy/a.coverage.png").toFile());
    assertEquals(16, site.getColorModel().getPixelSize());
    assertEquals(8, coverage.getColorModel().getPixelSize());
    // A2 of the second raft is at 200, 300 + 100: number 1024 * 1 + 1 + 1.
    assertEquals(1026, site.getRaster().getSample(200, 400, 0));
    assertEquals(255, coverage.getRaster().getSample(200, 400, 0));
    assertEquals(0, site.getRaster().getSample(150, 400, 0));
  }
}
