// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.fixture.HandMadeWorkplace;
import org.raftgauge.batch.fixture.SilentProgress;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.batch.store.BookLock;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.problem.InputException;

class RunFolderTest {
  private static final String EVENING = " at=2026-04-11T18:00:00+01:00";

  @TempDir private Path folder;

  private final HandMadeFarm farm = new HandMadeFarm("R1", "R2", "R3");
  private final SilentProgress progress = new SilentProgress();
  private HandMadeMeasurer measurer = new HandMadeMeasurer("s");
  private EnumSet<RunPictures.Kind> pictures = EnumSet.of(RunPictures.Kind.OVERLAY);
  private int workers = 2;

  @BeforeEach
  void makeFolders() throws IOException {
    Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(folder.resolve("photos"));
  }

  @Test
  void tablesHaveTheseBytes() throws Exception {
    photo("tonight/a.txt", "rafts=R1 area=10" + EVENING);

    run("out");

    // SHA-256 of the photo's text: printf 'rafts=R1 area=10 at=2026-04-11T18:00:00+01:00' |
    // sha256sum
    assertEquals(
        "photo,sha256,station,taken_at,rafts,status,reason,remedy,mm_per_px,pose_error_mm,sharpness,"
            + "exposure_clipped_fraction,light_cast,clock_doubt,camera_height_mm,shift_right_px,"
            + "shift_down_px,turn_deg,edge_blur_px,haze_fraction,board_light,light_across_ln,"
            + "light_down_ln,vignetting_fraction\r\n"
            + "tonight/a.txt,"
            + Digest.of(Files.readAllBytes(folder.resolve("photos/tonight/a.txt")))
            + ",bench,2026-04-11T18:00:00+01:00,R1,used,,,0.5000,0.41,0.910,0.0123,,,1600.0,,,,,,,,,\r\n",
        text("out/photos.csv"));
    // Days after transplant: 2026-04-06 to 2026-04-11 18:00 local is 5.75.
    String site =
        ",2026-04-11T18:00:00+01:00,5.750,%s,%s,%s,false,0.000,20.0,model,0.9500,%s,markers,0.800,,\r\n";
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
        text("out/sites.csv").replaceFirst("^[^\n]*\n", ""));
    // Sites with canopy: 10 and 20; sum 30, median 15, 10th 11, 90th 19; sd 7.0711 / 15 = 0.4714.
    assertEquals(
        "tonight/a.txt,bench,R1,P1,1,butterhead,L1,2026-04-11T18:00:00+01:00,5.750,3,1,0,0,0.2500,"
            + "30.00,15.00,11.00,19.00,0.4714,1.50,,markers,0.41,0.5000,0.900,,,\r\n",
        text("out/rafts.csv").replaceFirst("^[^\n]*\n", ""));
  }

  @Test
  void theNumberOfWorkersChangesNoByte() throws Exception {
    for (int i = 0; i < 12; i++) {
      photo(
          "p" + i + ".txt",
          "rafts=R" + i % 3 + " area=" + (i + 1) + " quality=0." + (i + 10) + EVENING);
    }
    workers = 1;
    run("one");
    Files.delete(folder.resolve("book/history.db"));
    workers = 4;
    run("four");

    Map<String, String> one = files("one");
    Map<String, String> four = files("four");
    assertTrue(one.remove("run.json").contains("\"workers\": 1"));
    assertTrue(four.remove("run.json").contains("\"workers\": 4"));
    assertEquals(one, four);
    assertEquals(33, one.size(), "six tables, three of ponds, twelve overlays and their boards");
  }

  @Test
  void aFolderRunTwiceMeasuresNothingAnewAndKeepsItsRowsAndPictures() throws Exception {
    photo("a.txt", "rafts=R1 ruler=A2 note=the_camera_has_moved" + EVENING);
    photo("b.txt", "rafts=R2" + EVENING);
    run("out");
    Map<String, String> first = files("out");

    RunSummary again = run("out");
    Map<String, String> second = files("out");

    assertEquals(2, measurer.calls());
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
    photo("a.txt", "rafts=R1" + EVENING);
    run("out");
    run("out");
    run("elsewhere");

    assertEquals(1, measurer.calls());
    assertEquals(files("out").get("overlays/a.jpg"), files("elsewhere").get("overlays/a.jpg"));
  }

  @Test
  void picturesOfAKnownPhotoAreMadeAnewWhereTheEarlierRunIsGone() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);
    run("out");
    String overlay = files("out").get("overlays/a.jpg");
    Files.delete(folder.resolve("out/overlays/a.jpg"));

    RunSummary again = run("out2");

    assertEquals(1, again.photos().get(PhotoStatus.KNOWN));
    assertEquals(2, measurer.calls());
    assertEquals(overlay, files("out2").get("overlays/a.jpg"));
  }

  @Test
  void aChangedBookMeasuresAnewAndDoublesNothing() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);
    run("out");
    measurer = new HandMadeMeasurer("other layout");

    RunSummary again = run("out");

    assertEquals(1, measurer.calls());
    assertEquals(1, again.photos().get(PhotoStatus.USED));
    try (History history = history()) {
      assertEquals(1, history.measures().findRaft("R1").size());
    }
  }

  @Test
  void theBetterOfTwoPhotosOfARaftCountsAndTheOtherSaysWhy() throws Exception {
    photo("blurred.txt", "rafts=R1 area=9 quality=0.4 at=2026-04-11T18:00:00+01:00");
    photo("sharp.txt", "rafts=R1 area=10 quality=0.9 at=2026-04-12T00:20:00+01:00");

    RunSummary summary = run("out");

    assertEquals(1, summary.photos().get(PhotoStatus.REPLACED));
    assertEquals(Optional.of(LocalDate.of(2026, 4, 11)), summary.evening());
    assertTrue(
        text("out/photos.csv")
            .contains(
                ",R1,replaced,\"sharp.txt shows raft R1 better that evening (quality 0.90, this one"
                    + " 0.40)\","),
        text("out/photos.csv"));
    assertFalse(text("out/sites.csv").contains("blurred.txt"));
    assertFalse(text("out/rafts.csv").contains("blurred.txt"));
  }

  @Test
  void aRetakeOnALaterRunReplacesTheFirstPhotoInTheHistory() throws Exception {
    photo("a.txt", "rafts=R1 area=9 quality=0.4" + EVENING);
    run("out");
    Files.delete(folder.resolve("photos/a.txt"));
    photo("b.txt", "rafts=R1 area=10 quality=0.9" + EVENING);

    run("out");

    assertEquals(List.of("a.txt replaced replaced", "b.txt used counts"), settled());
  }

  @Test
  void aWorseRetakeIsReplacedByThePhotoOfTheEarlierRun() throws Exception {
    photo("a.txt", "rafts=R1 area=9 quality=0.9" + EVENING);
    run("out");
    Files.delete(folder.resolve("photos/a.txt"));
    photo("b.txt", "rafts=R1 area=10 quality=0.4" + EVENING);

    RunSummary summary = run("out");

    assertEquals(1, summary.photos().get(PhotoStatus.REPLACED));
    assertEquals(List.of("a.txt used counts", "b.txt replaced replaced"), settled());
  }

  @Test
  void theSameIdOnTwoBoardsOfAPhotoHoldsBoth() throws Exception {
    photo("a.txt", "rafts=R1;R1" + EVENING);

    RunSummary summary = run("out");

    assertEquals(1, summary.photos().get(PhotoStatus.HELD));
    assertTrue(
        text("out/photos.csv").contains("R1;R1,held,raft id R1 is on two boards of one photo,"));
    assertEquals(1, summary.rafts());
    assertEquals(0, summary.totalAreaCm2());
    assertEquals(1, summary.attention().size(), summary.attention().toString());
    assertTrue(text("out/rafts.csv").contains(",3,0,0,3,,,,,,,,,"), text("out/rafts.csv"));
  }

  @Test
  void aRaftSeenAtTwoPassingStationsInOneEveningIsHeld() throws Exception {
    photo("a.txt", "rafts=R1 station=north" + EVENING);
    photo("b.txt", "rafts=R1 station=south" + EVENING);

    RunSummary summary = run("out");

    assertEquals(2, summary.photos().get(PhotoStatus.HELD));
    assertTrue(
        text("out/photos.csv").contains("raft id R1 was seen at north and south in one evening"));
  }

  @Test
  void rowsOfAnUnknownRaftAreKeptAndAskedAbout() throws Exception {
    photo("a.txt", "rafts=R9" + EVENING);
    photo("b.txt", "rafts=?" + EVENING);

    RunSummary summary = run("out");

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
        text("out/photos.csv")
            .contains(
                ",R9,used,unassigned: raft R9 has no planting on 2026-04-11,mend plantings.csv,"),
        text("out/photos.csv"));
    assertTrue(
        text("out/rafts.csv")
            .contains("unassigned: raft R9 has no planting on 2026-04-11; mend plantings.csv"));
    assertTrue(
        text("out/rafts.csv")
            .contains("unassigned: nothing tells which raft this is; name it in the manifest"));
  }

  @Test
  void aPhotoThatTheProgramFailsOnIsARowAndIsTriedAgain() throws Exception {
    photo("a.txt", "boom=1 rafts=R1" + EVENING);
    photo("b.txt", "rafts=R2" + EVENING);

    RunSummary summary = run("out");
    run("out");

    assertEquals(3, measurer.calls(), "the failed photo twice, the other once");
    assertEquals(1, summary.photos().get(PhotoStatus.REFUSED));
    assertTrue(
        text("out/photos.csv")
            .contains(
                ",refused,the program failed on this photo: java.lang.IllegalStateException: boom,"
                    + "\"run again; if it fails again, take the photo again and report this line\","));
    assertEquals(List.of("a.txt", "a.txt"), progress.failed());
  }

  @Test
  void aPhotoFromTheFutureIsMeasuredAndNotTakenForTheLatestEvening() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);
    photo("b.txt", "rafts=R2 at=2031-04-11T18:00:00+01:00");

    RunSummary summary = run("out");

    assertEquals(Optional.of(LocalDate.parse("2026-04-11")), summary.evening());
    assertEquals(2, summary.photos().get(PhotoStatus.USED));
    assertEquals(
        List.of(
            "photos of 2031-04-11 are dated in the future: measured and kept, not taken for"
                + " tonight; set the camera's clock, and give taken_at in manifest.csv"),
        summary.notes());
    run("out");
    assertEquals(2, measurer.calls(), "each once");
  }

  @Test
  void whereAllPhotosAreFromTheFutureTheLatestOfThemIsTonight() throws Exception {
    photo("b.txt", "rafts=R2 at=2031-04-11T18:00:00+01:00");
    assertEquals(Optional.of(LocalDate.parse("2031-04-11")), run("out").evening());
  }

  @Test
  void aRaftOfTwoEveningsCountsOnceAsOnTheLatest() throws Exception {
    photo("b.txt", "rafts=R1 area=20 at=2026-04-12T18:00:00+01:00");
    RunSummary latest = run("latest");
    photo("a.txt", "rafts=R1 area=10" + EVENING);
    RunSummary both = run("both");

    assertEquals(1, both.rafts());
    assertEquals(latest.sites(), both.sites());
    assertTrue(both.totalAreaCm2() > 0);
    assertEquals(latest.totalAreaCm2(), both.totalAreaCm2());
  }

  @Test
  void ofTwoFilesWithTheSameBytesTheSecondIsSkipped() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);
    photo("copy.txt", "rafts=R1" + EVENING);

    RunSummary summary = run("out");

    assertEquals(1, summary.rafts());
    assertEquals(1, summary.photos().get(PhotoStatus.SKIPPED));
    assertTrue(text("out/photos.csv").contains(",skipped,the same bytes as a.txt,"));
  }

  @Test
  void expectedRaftsThatNoPhotoShowsAreNamed() throws Exception {
    photo("a.txt", "rafts=R2" + EVENING);

    RunSummary summary = run("out");

    assertEquals(List.of("R1", "R3"), List.copyOf(summary.notPhotographed()));
    assertTrue(
        text("out/run.json")
            .contains("\"rafts_not_photographed\": [\n    \"R1\",\n    \"R3\"\n  ]"));
  }

  @Test
  void overManyEveningsItIsSaidForEachWhichRaftsAreMissing() throws Exception {
    photo("a.txt", "rafts=R2 at=2026-04-10T18:00:00+01:00");
    photo("b.txt", "rafts=R1;R2" + EVENING);

    RunSummary summary = run("out");

    assertEquals(Optional.of(LocalDate.of(2026, 4, 11)), summary.evening());
    assertEquals(List.of("R3"), List.copyOf(summary.notPhotographed()), "on the last evening");
    assertEquals("{2026-04-10=[R1, R3], 2026-04-11=[R3]}", summary.missing().toString());
    assertTrue(text("out/run.json").contains("\"2026-04-10\": [\n"), text("out/run.json"));
  }

  @Test
  void twoPhotosOfARaftInOneEveningGiveTheRepeatability() throws Exception {
    photo("a.txt", "rafts=R1 area=11 quality=0.9" + EVENING);
    photo("b.txt", "rafts=R1 area=10 quality=0.4" + EVENING);
    photo("c.txt", "rafts=R2" + EVENING);

    run("out");

    // d = ln(1.1) at both sites with canopy: sqrt(2 d^2 / 4) = 0.0674.
    String[] rows = text("out/rafts.csv").split("\r\n", -1);
    assertTrue(rows[0].endsWith(",reason,repeatability_ln,notes"), rows[0]);
    assertTrue(rows[1].startsWith("a.txt,bench,R1,") && rows[1].endsWith(",0.0674,"), rows[1]);
    assertTrue(rows[2].startsWith("c.txt,bench,R2,") && rows[2].endsWith(",,,"), rows[2]);
  }

  @Test
  void anOutlinesTurnIsSettledByTheEveningBeforeOfThisRunOrOfTheHistory() throws Exception {
    photo("a.txt", "rafts=R1 areas=10;30;20;5 at=2026-04-09T18:00:00+01:00");
    photo("b.txt", "rafts=R1 areas=6;24;36;12 pose=outline at=2026-04-10T18:00:00+01:00");
    run("out");

    assertTrue(areas("b.txt").contains("A1=12.00 A2=36.00 B1=24.00"), areas("b.txt"));
    assertTrue(text("out/photos.csv").contains(",R1,used,,"), text("out/photos.csv"));

    // On a later run the evening before is only in the history, measured as it lay: turned.
    Files.delete(folder.resolve("photos/a.txt"));
    Files.delete(folder.resolve("photos/b.txt"));
    photo("c.txt", "rafts=R1 areas=7;29;43;14 pose=outline" + EVENING);
    run("out");

    assertTrue(areas("c.txt").contains("A1=14.00 A2=43.00 B1=29.00"), areas("c.txt"));
  }

  @Test
  void anOverlayIsDrawnAnewOnceItsRaftIsTurned() throws Exception {
    photo("a.txt", "rafts=R1 areas=10;30;20;5 at=2026-04-09T18:00:00+01:00");
    photo("b.txt", "rafts=R1 areas=6;24;36;12 pose=outline at=2026-04-10T18:00:00+01:00");
    pictures = EnumSet.of(RunPictures.Kind.CANOPY);
    run("out");

    var straight = javax.imageio.ImageIO.read(folder.resolve("out/canopy/a.site.png").toFile());
    var turned = javax.imageio.ImageIO.read(folder.resolve("out/canopy/b.site.png").toFile());
    // The disc at 100, 100 is A1's as it was measured, and B2's (the last of four) seen from there.
    assertEquals(1, straight.getRaster().getSample(100, 100, 0));
    assertEquals(4, turned.getRaster().getSample(100, 100, 0));
  }

  @Test
  void anOutlineWithoutAnEveningBeforeIsHeldAndAskedAbout() throws Exception {
    photo("a.txt", "rafts=R1 pose=outline" + EVENING);
    photo("b.txt", "rafts=? pose=outline" + EVENING);
    photo("c.txt", "rafts=R3 pose=slot slot=S1" + EVENING);

    RunSummary summary = run("out");

    assertEquals(2, summary.photos().get(PhotoStatus.HELD));
    assertEquals(1, summary.photos().get(PhotoStatus.USED), "a slot says which end is which");
    assertTrue(
        summary
            .attention()
            .get(0)
            .startsWith(
                "a.txt: no marker, tag or mark tells which end of the board is which, and no"
                    + " earlier photo of these plants does; lay it with A1 at its usual end"),
        summary.attention().toString());
    assertFalse(
        text("out/sites.csv")
            .contains(
                "a.txt,bench,R1,P1,butterhead,,L1,A1,R1/A1,2026-04-11T18:00:00+01:00,5.750,10"));
  }

  @Test
  void withoutOutTheFolderIsNamedByTheEveningAndNeverReplaced() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);

    assertEquals(folder.resolve("book/runs/2026-04-11"), run(null).folder());
    assertEquals(folder.resolve("book/runs/2026-04-11-2"), run(null).folder());
  }

  @Test
  void aFolderWithOtherThingsIsNeverTouched() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);
    run("out");
    Files.writeString(folder.resolve("out/notes.txt"), "mine");

    InputException e = assertThrows(InputException.class, () -> run("out"));

    assertEquals(
        "OUT "
            + folder.resolve("out")
            + ": holds \"notes.txt\", which no earlier run wrote; give a new or empty folder, or an"
            + " earlier run's",
        e.getMessage());
    assertEquals("mine", text("out/notes.txt"));
  }

  @Test
  void theRunFolderMustNotLieAmongThePhotosNorHoldThem() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);

    assertTrue(
        assertThrows(InputException.class, () -> run("photos/out"))
            .getMessage()
            .contains(
                "lies inside the photo folder; pictures of the run would be taken for photos"));
    assertTrue(
        assertThrows(InputException.class, () -> run("."))
            .getMessage()
            .contains("holds the photos or the book; give an OUT of its own"));
    Files.createSymbolicLink(folder.resolve("link"), folder.resolve("photos"));
    assertTrue(
        assertThrows(InputException.class, () -> run("link/out"))
            .getMessage()
            .contains("photos/out: lies inside the photo folder"));
  }

  @Test
  void aRunThatFailsLeavesNothingButWhatItMeasured() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);
    progress.stopAfter(1);

    assertThrows(IllegalStateException.class, () -> run("out"));

    assertEquals(List.of("book", "photos"), names(folder));
    progress.stopAfter(Integer.MAX_VALUE);
    assertEquals(1, run("out").rafts());
  }

  @Test
  void aSecondRunOnABookSaysWhoHoldsIt() throws Exception {
    photo("a.txt", "rafts=R1" + EVENING);
    try (BookLock held = BookLock.take(folder.resolve("book"), Duration.ZERO, who -> {})) {
      IOException e = assertThrows(IOException.class, () -> run("out"));

      String holder = "another run (process " + ProcessHandle.current().pid() + " on ";
      assertTrue(e.getMessage().contains("book is in use by " + holder), e.getMessage());
      assertTrue(progress.waited().startsWith(holder), progress.waited());
      assertTrue(held != null);
    }
    assertEquals(1, run("out").rafts());
  }

  @Test
  void canopyPicturesHoldCoverageAndOwner() throws Exception {
    photo("a.txt", "rafts=R1;R2" + EVENING);
    pictures = EnumSet.of(RunPictures.Kind.CANOPY);

    run("out");

    assertEquals(
        List.of("canopy/a.coverage.png", "canopy/a.site.png"),
        files("out").keySet().stream().filter(f -> f.startsWith("canopy")).toList());
    var site = javax.imageio.ImageIO.read(folder.resolve("out/canopy/a.site.png").toFile());
    var coverage = javax.imageio.ImageIO.read(folder.resolve("out/canopy/a.coverage.png").toFile());
    assertEquals(16, site.getColorModel().getPixelSize());
    assertEquals(8, coverage.getColorModel().getPixelSize());
    // A2 of the second raft is at 200, 300 + 100: number 1024 * 1 + 1 + 1.
    assertEquals(1026, site.getRaster().getSample(200, 400, 0));
    assertEquals(255, coverage.getRaster().getSample(200, 400, 0));
    assertEquals(0, site.getRaster().getSample(150, 400, 0));
  }

  private RunSummary run(String out) throws InputException, IOException {
    Tools tools = new Tools(farm, measurer, new RunPictures(farm, pictures), progress);
    RunRequest request =
        new RunRequest(
            folder.resolve("photos"),
            folder.resolve("book"),
            Optional.ofNullable(out).map(folder::resolve),
            workers,
            Duration.ofMillis(50),
            OffsetDateTime.parse("2026-04-12T07:00:00+01:00").plusNanos(System.nanoTime()));
    return RunFolder.run(request, HandMadeWorkplace.find(folder.resolve("photos")), tools);
  }

  /** Returns the areas of a photo's sites as the last run wrote them. */
  private String areas(String photo) throws IOException {
    StringBuilder areas = new StringBuilder();
    for (String row : text("out/sites.csv").split("\r\n", -1)) {
      String[] cells = row.split(",", -1);
      if (cells[0].equals(photo)) {
        areas.append(cells[7]).append('=').append(cells[11]).append(' ');
      }
    }
    return areas.toString();
  }

  private List<String> settled() throws Exception {
    List<String> rows = new ArrayList<>();
    String url = "jdbc:sqlite:" + folder.resolve("book/history.db");
    try (var database = java.sql.DriverManager.getConnection(url);
        var statement = database.createStatement();
        var row =
            statement.executeQuery(
                "SELECT photo, status, settled FROM photos JOIN rafts USING (sha256)"
                    + " ORDER BY photo")) {
      while (row.next()) {
        rows.add(row.getString(1) + " " + row.getString(2) + " " + row.getString(3));
      }
    }
    return rows;
  }

  private History history() throws IOException {
    return History.open(folder.resolve("book/history.db"));
  }

  private void photo(String name, String text) throws IOException {
    Path file = folder.resolve("photos").resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private Map<String, String> files(String name) throws IOException {
    Map<String, String> files = new TreeMap<>();
    Path root = folder.resolve(name);
    try (var walk = Files.walk(root)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        String text =
            new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
        files.put(root.relativize(file).toString().replace('\\', '/'), text);
      }
    }
    return files;
  }

  private static List<String> names(Path folder) throws IOException {
    try (var list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
