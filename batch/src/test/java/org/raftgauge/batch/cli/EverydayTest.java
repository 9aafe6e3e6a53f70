// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.batch.fixture.SmallFarm;
import org.raftgauge.batch.run.MarkSeen;
import org.raftgauge.core.problem.InputException;

/** Rows that are marked seen, books that are found, photos that are chosen. */
class EverydayTest {
  private static final String ITEM = "inspect-lagging/K-0/2027-03-01/A1";

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeEach
  void writeBook() throws IOException {
    SmallFarm.writeBook(folder.resolve("book"));
  }

  @Test
  void aRowMarkedSeenIsGoneUntilItsDayAndBackOnIt() throws IOException {
    importMeasures();
    assertTrue(worklist("2027-03-10").contains(ITEM), "to begin with");

    assertEquals(0, run("seen", ITEM, "--until", "2027-03-12", "--book", path("book")), text(err));
    assertTrue(text(out).contains("To undo, delete line 2 of "), text(out));

    assertFalse(worklist("2027-03-10").contains(ITEM), "hidden on the 11th");
    // The list of the evening of the 11th is for the 12th, the first day on which it may show.
    assertTrue(worklist("2027-03-11").contains(ITEM), "back on the 12th");
    Files.writeString(folder.resolve("book/seen.csv"), "item,until,by,note\r\n");
    assertTrue(worklist("2027-03-10").contains(ITEM), "undone by hand");
  }

  @Test
  void rowsAreAddedInTheFilesOwnOrderAndWhatStandsThereStays() throws Exception {
    String before = "note,item,until\n\"old, kept\",tag/K-1/2027-03-01,";
    Files.writeString(folder.resolve("book/seen.csv"), before);
    int line =
        MarkSeen.add(
            folder.resolve("book"),
            new MarkSeen.Say(
                List.of(ITEM),
                Optional.of(LocalDate.of(2027, 3, 12)),
                "",
                "=cmd, \"x\"",
                LocalDate.EPOCH));
    String after = Files.readString(folder.resolve("book/seen.csv"));
    assertEquals(before + "\r\n\"'=cmd, \"\"x\"\"\"," + ITEM + ",2027-03-12\r\n", after);
    assertEquals(3, line);
  }

  @Test
  void theSameRowIsNotAddedTwice() throws Exception {
    importMeasures();
    String[] seen = {"seen", ITEM, "--until", "2027-03-12", "--book", path("book")};
    assertEquals(0, run(seen), text(err));
    String before = Files.readString(folder.resolve("book/seen.csv"));
    assertEquals(2, run(seen));
    assertEquals(
        "seen.csv:2: says the same already, nothing was added; delete that line to show the row"
            + " again\n",
        text(err));
    assertEquals(before, Files.readString(folder.resolve("book/seen.csv")));
  }

  @Test
  void aDateThatIsNoneIsAnsweredWithItsForm() {
    assertEquals(2, run("seen", ITEM, "--until", "12.3.2027", "--book", path("book")));
    assertTrue(
        text(err)
            .startsWith(
                "Invalid value for option '--until': \"12.3.2027\" is not a date; write"
                    + " year-month-day, as in 2026-04-16\n"),
        text(err));
  }

  @Test
  void aDayThatIsOverHidesNothingAndIsRefused() throws IOException {
    importMeasures();
    assertEquals(2, run("seen", ITEM, "--until", "2026-03-20", "--book", path("book")));
    assertEquals(
        "--until 2026-03-20: is not after the evening of the worklist, 2027-03-11: it hides nothing;"
            + " give a later day, or name an earlier list's evening with --on\n",
        text(err));
    assertFalse(Files.exists(folder.resolve("book/seen.csv")), "nothing was written");
  }

  @Test
  void aColumnThatIsMissingIsNamed() throws Exception {
    importMeasures();
    Files.writeString(folder.resolve("book/seen.csv"), "item\n");
    assertEquals(2, run("seen", ITEM, "--by", "Ana", "--book", path("book")));
    assertEquals(
        "seen.csv:1: there is no column \"by\"; write the header as item,until,by,note, with"
            + " commas\n",
        text(err));
  }

  @Test
  void aRowThatTheWorklistDoesNotHaveIsRefusedAndTheNearestNamed() throws IOException {
    importMeasures();
    String no =
        "ITEM \"" + ITEM.replace("A1", "B1") + "\": is no row of the worklist of the evening";
    // SmallFarm lets only A1 lag: B1 is a site of the raft, and no row.
    assertEquals(2, run("seen", ITEM.replace("A1", "B1"), "--book", path("book")));
    assertTrue(text(err).startsWith(no + " of 2027-03-11; did you mean \"" + ITEM), text(err));
    assertEquals(2, run("seen", ITEM, "--on", "2027-02-20", "--book", path("book")));
    assertTrue(text(err).contains("of 2027-02-20; copy it from the column item"), text(err));
    assertFalse(Files.exists(folder.resolve("book/seen.csv")), "nothing was written");
  }

  @Test
  void aBookWithoutPhotosHasNoRowsToMark() {
    assertEquals(2, run("seen", ITEM, "--book", path("book")));
    assertTrue(text(err).contains("has no history yet"), text(err));
  }

  @Test
  void aHiddenRowIsCountedWhereNothingElseIsToDo() throws IOException {
    importMeasures();
    run("seen", ITEM, "--until", "2027-03-20", "--book", path("book"));
    out.reset();
    worklist("2027-03-10");
    assertTrue(
        text(out).contains("To do    nothing else; 1 row is hidden: 1 put off until 2027-03-20\n"),
        text(out));
  }

  @Test
  void anEveningFromBeforeARowWasMarkedStandsAsItStoodThen() throws IOException {
    importMeasures();
    Path seen = folder.resolve("book/seen.csv");
    Files.writeString(seen, "item,seen_on\n" + ITEM + ",2027-03-10\n");
    assertTrue(asOfThen("2027-03-09").contains(ITEM), "marked a day later");
    assertFalse(asOfThen("2027-03-10").contains(ITEM), "marked that day");
    assertFalse(worklist("2027-03-09").contains(ITEM), "with what was marked since");
    Files.writeString(seen, "item,seen_on\n" + ITEM + ",\n");
    assertFalse(asOfThen("2027-03-09").contains(ITEM), "nobody says when");
  }

  @Test
  void theBookIsFoundBesideOrAboveAndTheNearestCounts() throws Exception {
    Path photos = Files.createDirectories(folder.resolve("photos/2027/tonight"));
    assertEquals(folder.resolve("book").toRealPath(), found(photos));
    assertTrue(text(err).startsWith("Book     "), text(err));
    SmallFarm.writeBook(folder.resolve("photos/near"));
    assertEquals(folder.resolve("photos/near").toRealPath(), found(photos));
    assertEquals(
        folder.resolve("book").toRealPath(),
        found(Files.createDirectories(folder.resolve("book/photos"))));
  }

  @Test
  void everyCommandOnABookFindsItAlike() {
    for (String command :
        List.of(
            "run",
            "check",
            "import",
            "judge",
            "agree",
            "teach",
            "forecast",
            "look-back",
            "seen",
            "grader fit",
            "grader check",
            "grader picks",
            "station check",
            "station slots",
            "station print marks")) {
      out.reset();
      assertEquals(0, run((command + " --help").split(" ")), command);
      String help = text(out).replaceAll("\\s+", " ");
      assertTrue(help.contains("Default: the one in, beside or above the photos"), command);
      assertFalse(help.matches(".*Usage: [^\\[]*--book.*"), command + " demands it: " + help);
    }
  }

  @Test
  void checkFindsTheBookBesideThePhotos() throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    run("check", path("photos"));
    assertTrue(text(err).contains("book (found; --book names another)"), text(err));
  }

  @Test
  void aBookInThePlaceOfThePhotosIsSaidWithWhereTheyLie() throws IOException {
    Files.createDirectories(folder.resolve("book/runs/2027-03-01/overlays"));
    Files.writeString(folder.resolve("book/runs/2027-03-01/overlays/a.jpg"), "a picture of a run");
    for (String command : List.of("run", "check")) {
      err.reset();
      assertEquals(2, run(command, path("book")));
      String said =
          "is a crop book (it holds book.yaml), not the photos; give the folder that holds"
              + " the photos, as in \""
              + path("photos")
              + "\"; it lies beside or below the book";
      assertTrue(text(err).contains(said), text(err));
    }
    Files.createDirectories(folder.resolve("book/card"));
    Files.writeString(folder.resolve("book/card/a.jpg"), "a photo");
    err.reset();
    assertEquals(2, run("run", path("book")));
    assertTrue(text(err).contains("the photos, \"" + path("book/card") + "\""), text(err));
  }

  @Test
  void aDeskWithoutAWatchIsRefused() throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    assertEquals(2, run("run", path("photos"), "--desk", "8750"));
    assertTrue(text(err).contains("--desk goes with --watch"), text(err));
  }

  private Path found(Path photos) throws InputException, IOException {
    return FindBook.of(Optional.empty(), photos, console()).toRealPath();
  }

  @Test
  void twoBooksEquallyNearAreAskedAbout() throws IOException {
    SmallFarm.writeBook(folder.resolve("other"));
    Files.createDirectories(folder.resolve("photos"));
    assertEquals(2, run("run", path("photos")));
    assertTrue(text(err).contains("2 books are equally near"), text(err));
    assertTrue(text(err).contains("name one with --book"), text(err));
  }

  @Test
  void aRaftThatNobodyPlantedIsAsked() throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    assertEquals(2, run("run", path("photos"), "--raft", "K-8"));
    assertTrue(
        text(err).contains("--raft K-8: no planting of the book is on such a raft"), text(err));
  }

  @Test
  void optionsThatAskForNothingLeaveThePhotosAlone() {
    assertTrue(new ChoosePhotos(Optional.empty(), Optional.empty(), Set.of()).all());
    assertFalse(new ChoosePhotos(Optional.empty(), Optional.empty(), Set.of("K-0")).all());
  }

  @Test
  void photosOfOtherEveningsAndRaftsAreLeftOut() throws Exception {
    Path samples = Path.of("../sample-images");
    Path photos = Files.createDirectories(folder.resolve("photos"));
    String name = "2026-03-06_KV-112.jpg";
    Files.copy(samples.resolve("photos/2026-03-06/" + name), photos.resolve(name));
    String book = samples.resolve("book").toString();
    for (List<String> asked :
        List.of(
            List.of("--since", "2026-03-07"),
            List.of("--to", "2026-03-05"),
            List.of("--raft", "KV-118"))) {
      err.reset();
      List<String> args = new ArrayList<>(List.of("run", path("photos"), "--book", book));
      args.addAll(asked);
      assertEquals(2, run(args.toArray(String[]::new)), asked.toString());
      assertTrue(text(err).contains("holds no photo of what --since, --to and --raft"), text(err));
    }
    var found = new BookWorkplace().photos(photos);
    var farm = new BookWorkplace().open(samples.resolve("book")).farm();
    LocalDate day = LocalDate.of(2026, 3, 6);
    var that = new ChoosePhotos(Optional.of(day), Optional.of(day), Set.of("KV-112"));
    assertEquals(1, that.of(found, farm, folder.resolve("book")).photos().size());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "run",
        "check",
        "import",
        "judge",
        "agree",
        "teach",
        "grader",
        "grader fit",
        "grader check",
        "grader picks",
        "station",
        "station lens",
        "station print",
        "station print marks",
        "station print target",
        "station slots",
        "station check",
        "forecast",
        "look-back",
        "new",
        "seen",
        "completion"
      })
  void theHelpOfEachCommandHasAnExample(String command) {
    String[] args = (command + " --help").split(" ", -1);
    assertEquals(0, run(args));
    String examples = text(out).substring(text(out).indexOf("Example"));
    assertTrue(examples.contains("raftgauge " + command), text(out));
  }

  @Test
  void completionKnowsCommandsAndOptions() {
    assertEquals(0, run("completion"));
    assertTrue(text(out).contains("complete -F _complete_raftgauge"), "a bash script");
    assertTrue(text(out).contains("'--since'"), "options of run");
  }

  private void importMeasures() throws IOException {
    Files.writeString(folder.resolve("sites.csv"), SmallFarm.measures(10));
    run("import", path("sites.csv"), "--book", path("book"));
  }

  private String asOfThen(String evening) throws IOException {
    String[] judge = {"judge", "--book", path("book"), "--on", evening, "--out", path("judged")};
    assertEquals(0, run(judge), text(err));
    return Files.readString(folder.resolve("judged/worklist.csv"));
  }

  /** Returns an evening's worklist with all that was marked seen since, on this machine's clock. */
  private String worklist(String evening) throws IOException {
    assertEquals(
        0,
        run(
            "judge",
            "--book",
            path("book"),
            "--on",
            evening,
            "--out",
            path("judged"),
            "--corrected"),
        text(err));
    return Files.readString(folder.resolve("judged/worklist.csv"));
  }

  private Console console() {
    return new Console(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        false);
  }

  private int run(String... args) {
    return Raftgauge.run(args, new BookWorkplace(), console());
  }

  private static String text(ByteArrayOutputStream stream) {
    return stream.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }
}
