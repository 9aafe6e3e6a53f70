// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.problem.Problem;

/**
 * Checks photo folders against a copy of the sample book: bench 1280 x 1200, gantry 1620 x 1090.
 */
class CheckPhotosTest {
  private static final Path SAMPLE_BOOK = Path.of("..", "sample-images", "book");
  private static final String KNOWN_RAFTS = "known: ";

  @TempDir private Path folder;

  @BeforeEach
  void copyBook() throws IOException {
    try (Stream<Path> files = Files.walk(SAMPLE_BOOK)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String name = SAMPLE_BOOK.relativize(file).toString();
        if (name.endsWith(".yaml") || name.endsWith(".csv")) {
          Path copy = folder.resolve("book").resolve(name);
          Files.createDirectories(copy.getParent());
          Files.copy(file, copy);
        }
      }
    }
    Files.createDirectories(folder.resolve("photos"));
  }

  @Test
  void soundPhotosHaveNoProblem() throws IOException {
    picture("2026-03-10_KV-112.png", 1280, 1200);
    picture("half/2026-03-10_KV-118.png", 640, 600);
    assertEquals(List.of(), problems());
  }

  @Test
  void aFolderWithoutPhotosIsSaidAsARunSaysIt() {
    assertEquals(
        List.of(
            "PHOTOS "
                + folder.resolve("photos")
                + ": holds no photos; give the folder that holds the photos: JPEG, PNG or TIFF"),
        problems());
  }

  @Test
  void aMisspeltRaftInAFileNameIsNamedWithTheNearest() throws IOException {
    picture("2026-03-10_KV112.png", 1280, 1200);
    // No raft is near "trial": its tag may tell it, and the run says where nothing does.
    picture("2026-03-11_trial.png", 1280, 1200);
    assertEquals(
        List.of(
            "2026-03-10_KV112.png: no planting is on the raft \"KV112\" of its name; add it to"
                + " plantings.csv, or, if \"KV-112\" is meant, mend the file's name, the tag or"
                + " manifest.csv"),
        problems());
  }

  @Test
  void raftsOfFileNamesThatNoPlantingHasAreNotedOnceEach() throws IOException {
    picture("2026-03-10_KV-112.png", 1280, 1200);
    picture("2026-03-10_KV112.png", 1280, 1200);
    picture("2026-03-11_trial.png", 1280, 1200);
    picture("2026-03-12_trial.png", 1280, 1200);
    picture("2026-03-12_Oak 7.png", 1280, 1200);
    assertEquals(
        List.of(
            "plantings.csv has no raft of these names of photos: Oak 7, trial; add what is missing,"
                + " unless the photos' tags tell other rafts"),
        new BookWorkplace().notes(folder.resolve("book"), folder.resolve("photos")));
  }

  @Test
  void copiesAreNamedWithTheOneThatCounts() throws IOException {
    picture("2026-03-10_KV-112.png", 1280, 1200);
    Path photos = folder.resolve("photos");
    Files.copy(photos.resolve("2026-03-10_KV-112.png"), photos.resolve("2026-03-10_KV-112 b.png"));
    assertEquals(
        List.of(
            "2026-03-10_KV-112 b.png: holds the same bytes as 2026-03-10_KV-112.png, and a run"
                + " counts one of them; take the copy out of the folder"),
        problems());
  }

  @Test
  void everyUnreadableOddAndUndatedPhotoIsListedAtOnce() throws IOException {
    Files.write(folder.resolve("photos/2026-03-10_KV-112.jpg"), new byte[0]);
    Files.writeString(folder.resolve("photos/2026-03-11_KV-112.jpg"), "no picture");
    picture("2026-03-12_KV-112.png", 1200, 1280);
    picture("2026-03-13_KV-112.png", 8, 8);
    picture("IMG_1.png", 1280, 1200);
    Files.writeString(folder.resolve("photos/IMG_2.HEIC"), "");
    Files.writeString(folder.resolve("photos/notes.txt"), "");

    assertEquals(
        List.of(
            "IMG_2.HEIC: files of this kind are not read; save it as a JPEG, or set the camera to"
                + " JPEG",
            "2026-03-10_KV-112.jpg: the file is empty (0 bytes); copy it from the camera again; if"
                + " it is the same there, take the photo again",
            "2026-03-11_KV-112.jpg: the file is not a JPEG, PNG or TIFF picture; save it as an"
                + " ordinary RGB JPEG, or set the camera to JPEG",
            "2026-03-12_KV-112.png: the photo is 1200 x 1280 px, station bench takes 1280 x 1200:"
                + " not the same shape; use the station's own camera, uncropped, or name the"
                + " photo's station",
            "2026-03-13_KV-112.png: the picture is too small to measure: 8 x 8 px; use the photo as"
                + " the camera took it, not a thumbnail",
            "IMG_1.png: nothing tells when the photo was taken; set the camera's clock, put the"
                + " date into the file's name, or give taken_at in manifest.csv"),
        problems());
  }

  @Test
  void misspeltNamesOfTheManifestAreNamedWithTheRightOnes() throws IOException {
    picture("a.png", 1280, 1200);
    picture("b.png", 1620, 1090);
    picture("c.png", 1620, 1090);
    picture("d.png", 1620, 1090);
    manifest(
        """
        photo,taken_at,station,slot,raft
        a.png,2026-03-10T18:00,bnch,,KV-112
        b.png,2026-03-10T18:00,gantry,s5,
        c.png,2026-03-10T18:00,gantry,s1,KV-111
        d.png,2026-03-10T18:00,gantry,=s1,
        e.png,2026-03-10T18:00,,,
        """);

    List<String> problems = problems();
    assertEquals(
        List.of(
            "manifest.csv:5: column slot: \"=s1\" is not a name: it begins with \"=\"; write at most"
                + " 32 letters, digits, spaces and . - _ ' ( ) & + #, beginning with a letter or"
                + " digit",
            "manifest.csv:6: there is no photo \"e.png\"; write the path below the photo folder,"
                + " with forward slashes",
            "manifest.csv:2: column station: \"bnch\" is unknown; did you mean \"bench\"? known:"
                + " bench, gantry",
            "manifest.csv:3: column slot: \"s5\" is unknown; did you mean \"s1\"? known: s1, s2, s3,"
                + " s4",
            "manifest.csv:4: column raft: \"KV-111\" is unknown; did you mean \"KV-112\"?"),
        problems.stream().map(CheckPhotosTest::withoutRafts).toList());
  }

  private static String withoutRafts(String problem) {
    int at = problem.indexOf(" " + KNOWN_RAFTS);
    return at > 0 && problem.contains("column raft") ? problem.substring(0, at) : problem;
  }

  @Test
  void namesAreNotCalledUnknownWhereTheBookCouldNotBeRead() throws IOException {
    picture("a.png", 1280, 1200);
    manifest("photo,taken_at,raft\na.png,2026-03-10T18:00,KV-112\n");
    Path plantings = folder.resolve("book/plantings.csv");
    Files.writeString(plantings, Files.readString(plantings).replace(',', ';'));

    List<String> problems = problems();
    assertEquals(1, problems.size(), () -> String.join("\n", problems));
  }

  @Test
  void aTimeOfTheManifestThatCannotBeReadIsOneProblem() throws IOException {
    picture("a.png", 1280, 1200);
    manifest("photo,taken_at\na.png,yesterday\n");

    assertEquals(
        List.of(
            "manifest.csv:2: column taken_at: \"yesterday\" is not a time; write date and time, as"
                + " in 2026-04-06T18:00"),
        problems());
  }

  @Test
  void aManifestMayWriteADateAloneAndAnAccentAsItsOwnCharacter() throws IOException {
    picture("Su\u0308d.png", 1280, 1200);
    manifest("photo,taken_at\nS\u00fcd.png,2026-03-10\n");

    assertEquals(List.of(), problems());
  }

  @Test
  void aDateAloneThatIsNoneIsOneProblem() throws IOException {
    picture("a.png", 1280, 1200);
    manifest("photo,taken_at\na.png,2026-02-30\n");

    assertEquals(
        List.of(
            "manifest.csv:2: column taken_at: \"2026-02-30\" is not a date; write year-month-day,"
                + " as in 2026-04-06"),
        problems());
  }

  @Test
  void aLinkThatLeadsNowhereAndAClockThatIsAheadAreSaid() throws IOException {
    Files.createSymbolicLink(folder.resolve("photos/gone.jpg"), folder.resolve("nowhere"));
    picture("2199-03-10_KV-112.png", 1280, 1200);

    assertEquals(
        List.of(
            "gone.jpg: is a link that leads nowhere; copy the photo itself there, or take it away",
            "2199-03-10_KV-112.png: its time is in doubt: the time 2199-03-10T18:00+01:00 is in the"
                + " future; set the camera's clock, mend the file's name, or give taken_at in manifest.csv"),
        problems());
  }

  private List<String> problems() {
    return new BookWorkplace()
        .check(folder.resolve("book"), Optional.of(folder.resolve("photos"))).stream()
            .map(Problem::toString)
            .toList();
  }

  private void picture(String name, int width, int height) throws IOException {
    Path file = folder.resolve("photos").resolve(name);
    Files.createDirectories(file.getParent());
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, name.hashCode()); // no two photos hold the same bytes
    ImageIO.write(image, "png", file.toFile());
  }

  private void manifest(String text) throws IOException {
    Files.writeString(folder.resolve("photos/manifest.csv"), text);
  }
}
