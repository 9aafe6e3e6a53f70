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
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.SmallFarm;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.History;

/** The commands that correct a history and look after it, over imported measures. */
class AmendAndHistoryTest {
  private static final String LAST = "2027-03-10";

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  /** Six rafts of four plants over ten evenings; A1 of K-0 grows to half of the others. */
  @BeforeEach
  void makeBook() throws IOException {
    SmallFarm.writeBook(folder.resolve("book"));
    // Photo names, so that they can be named.
    StringBuilder csv = new StringBuilder("photo," + SmallFarm.HEAD);
    for (String line : SmallFarm.measures(9).lines().skip(1).toList()) {
      String[] cells = line.split(",", -1);
      csv.append(cells[2], 0, 10).append('/').append(cells[0]).append(".jpg,");
      csv.append(String.join(",", cells[0], cells[1], cells[2], levelling(cells))).append('\n');
    }
    Files.writeString(folder.resolve("sites.csv"), csv);
    assertEquals(0, call("import", folder.resolve("sites.csv").toString()), said(err));
    out.reset();
  }

  @Test
  void anExcludedPhotoIsNotJudgedAndIsAgainWhenThatIsUndone() throws IOException {
    assertEquals(0, amend("exclude", LAST + "/K-0.jpg"), said(err));
    String entered = said(out);
    assertTrue(entered.startsWith("Entered correction 1 ("), entered);
    assertTrue(entered.contains(", Ana) excludes " + LAST + "/K-0.jpg: wrong tag"), entered);
    assertTrue(entered.contains("To undo: raftgauge amend undo 1 --reason ..."), entered);

    judge("corrected", "--corrected");
    assertFalse(rafts("corrected").contains("K-0"), "K-0 was not photographed that evening");
    assertTrue(text("corrected/run.json").contains("excludes " + LAST + "/K-0.jpg: wrong tag"));

    assertEquals(0, amend("undo", "1"), said(err));
    judge("undone", "--corrected");
    assertTrue(rafts("undone").contains("K-0"));
    assertTrue(text("undone/run.json").contains("\"corrections\": []"));
  }

  @Test
  void judgeSeesOnlyCorrectionsThatWereEnteredByThatEvening() throws IOException {
    // The evening of 10 March ends at 04:00 on the 11th, UTC.
    enter("2027-03-11T03:59:59Z", LAST + "/K-0.jpg");
    enter("2027-03-11T04:00:00Z", LAST + "/K-1.jpg");

    judge("then");
    judge("since", "--corrected");

    assertEquals(List.of("K-1", "K-2", "K-3", "K-4", "K-5"), rafts("then"));
    assertEquals(List.of("K-2", "K-3", "K-4", "K-5"), rafts("since"));
  }

  @Test
  void forecastObeysWhatWasKnownThatEveningToo() throws IOException {
    assertEquals(0, forecast("before"), said(err));
    enter("2027-03-11T04:00:00Z", LAST + "/K-0.jpg");
    assertEquals(0, forecast("later"), said(err));
    assertEquals(text("before/forecast.csv"), text("later/forecast.csv"));
    enter("2027-03-10T22:00:00Z", LAST + "/K-1.jpg");
    assertEquals(0, forecast("known"), said(err));
    assertFalse(text("before/forecast.csv").equals(text("known/forecast.csv")));
  }

  @Test
  void aPhotoIsNamedByAnyPathThatEndsInItsOwn() throws IOException {
    assertEquals(0, amend("exclude", "./" + LAST + "/K-0.jpg"), said(err));
    assertEquals(0, amend("exclude", "/card/photos/" + LAST + "/K-1.jpg"), said(err));
    assertEquals(0, amend("exclude", "D:\\photos\\" + LAST + "\\K-2.jpg"), said(err));
    judge("named", "--corrected");
    assertEquals(List.of("K-3", "K-4", "K-5"), rafts("named"));
  }

  @Test
  void aMovedPhotoCountsForTheOtherRaft() throws IOException {
    assertEquals(0, amend("exclude", LAST + "/K-1.jpg"), said(err));
    assertEquals(0, amend("move", LAST + "/K-0.jpg", "--to", "K-1"), said(err));

    judge("moved", "--corrected");

    assertFalse(rafts("moved").contains("K-0"));
    assertTrue(rafts("moved").contains("K-1"));
    // A1 of K-0 grows to half of the others: moved, it stands on K-1.
    String verdicts = text("moved/verdicts.csv");
    assertTrue(
        verdicts.lines().anyMatch(l -> l.startsWith("site,") && l.contains(",K-1,A1,")), verdicts);
  }

  @Test
  void aFolderOfWrongTimesIsMendedAtOnce() throws IOException {
    assertEquals(0, amend("clock", LAST + "/", "--shift", "-24:00"), said(err));
    assertEquals(6, said(out).lines().filter(l -> l.startsWith("Entered ")).count());

    judge("mended", "--corrected");

    assertEquals(List.of(), rafts("mended"), "all were taken the evening before");
  }

  @Test
  void whatCannotBeIsRefusedWithARemedyAndNothingIsEntered() throws IOException {
    Map<List<String>, String> cases = new TreeMap<>((a, b) -> a.toString().compareTo("" + b));
    cases.put(
        List.of("exclude", LAST + "/K-0.jpg", "nowhere.jpg"),
        "PHOTO \"nowhere.jpg\": is no photo of the history; write its path or its name as in"
            + " photos.csv, a folder with a slash at its end, or the first 8 or more digits of its"
            + " sha256");
    cases.put(
        List.of("exclude", "K-0.jpg"),
        "PHOTO \"K-0.jpg\": is the name of 10 photos; write more of the path of one:"
            + " 2027-03-01/K-0.jpg, 2027-03-02/K-0.jpg, 2027-03-03/K-0.jpg, 2027-03-04/K-0.jpg,"
            + " 2027-03-05/K-0.jpg, 2027-03-06/K-0.jpg, ...");
    cases.put(
        List.of("exclude", LAST),
        "PHOTO \""
            + LAST
            + "\": is a folder of 6 photos; write "
            + LAST
            + "/ if all of them are meant");
    cases.put(
        List.of("exclude", "2027-04-10/K-0.jpg"),
        "PHOTO \"2027-04-10/K-0.jpg\": is no photo of the history; write its path or its name as in"
            + " photos.csv, a folder with a slash at its end, or the first 8 or more digits of its"
            + " sha256");
    cases.put(
        List.of("move", LAST + "/K-0.jpg", "--to", "K-9"),
        "PHOTO \""
            + LAST
            + "/K-0.jpg\": cannot show raft K-9: it has no planting on 2027-03-10; did you mean"
            + " \"K-0\"?");
    cases.put(
        List.of("move", LAST + "/K-0.jpg", "--to", "K-0"),
        "PHOTO \""
            + LAST
            + "/K-0.jpg\": shows raft K-0 already; exclude the photo, or move that raft first");
    cases.put(
        List.of("move", LAST + "/K-0.jpg", "--to", "K-1", "--raft", "K-5"),
        "PHOTO \"" + LAST + "/K-0.jpg\": shows raft K-0; say which one is meant by --raft");
    cases.put(
        List.of("clock", LAST + "/K-0.jpg", "--shift", "1h"),
        "--shift: \"1h\" is no shift of a clock; write sign, hours and minutes, as in +1:00 or"
            + " -26:30");
    cases.put(
        List.of("undo", "7"),
        "NUMBER 7: is no correction that holds; see \"raftgauge amend list\"");
    for (Map.Entry<List<String>, String> each : cases.entrySet()) {
      err.reset();
      assertEquals(2, amend(each.getKey().toArray(String[]::new)), each.getKey().toString());
      assertTrue(said(err).contains(each.getValue()), said(err));
    }
    out.reset();
    assertEquals(0, call("amend", "list"));
    assertEquals("No corrections\n", said(out));
  }

  @Test
  void theSameCorrectionTwiceIsRefusedAndAReasonMustBeOneLine() throws IOException {
    assertEquals(0, amend("exclude", LAST + "/K-0.jpg"));
    assertEquals(2, amend("exclude", LAST + "/K-0.jpg"));
    assertTrue(said(err).contains("is corrected so already: correction 1 ("), said(err));
    assertTrue(said(err).contains("undo that first: raftgauge amend undo 1"), said(err));
    err.reset();
    assertEquals(2, call("amend", "exclude", LAST + "/K-1.jpg", "--reason", "a\nb"));
    assertTrue(said(err).startsWith("--reason: is over one line"), said(err));
  }

  @Test
  void listSaysWhatHoldsAndWhatIsUndone() throws IOException {
    amend("exclude", LAST + "/K-0.jpg");
    amend("undo", "1");
    out.reset();

    assertEquals(0, call("amend", "list"));

    List<String> lines = said(out).lines().toList();
    assertTrue(lines.get(0).startsWith("undone: correction 1 ("), lines.toString());
    assertTrue(lines.get(1).startsWith("correction 2 ("), lines.toString());
  }

  @Test
  void aHistoryGoesOutAsCsvAndComesInToANewBookTheSame() throws IOException {
    amend("exclude", LAST + "/K-0.jpg");
    assertEquals(0, call("history", "export", path("one")), said(err));
    SmallFarm.writeBook(folder.resolve("new"));
    assertEquals(0, program("import", "--history", path("one"), "--book", path("new")), said(err));
    assertEquals(0, program("history", "export", path("two"), "--book", path("new")), said(err));

    for (String name : List.of("photos", "rafts", "sites", "corrections", "tables", "runs")) {
      assertEquals(text("one/" + name + ".csv"), text("two/" + name + ".csv"), name);
    }
    err.reset();
    assertEquals(2, program("import", "--history", path("one"), "--book", path("new")));
    assertTrue(said(err).contains("has a history already; give a book without"), said(err));
    assertEquals(2, call("history", "export", path("one")));
  }

  @Test
  void importTakesAFileOrAHistoryNotBothAndNotNeither() {
    assertEquals(2, program("import", "--book", path("book")));
    assertTrue(said(err).startsWith("Give SITES_CSV, or --history with a folder"), said(err));
  }

  @Test
  void checkSaysWhetherTheHistoryIsWholeAndNamesItsBackups() throws IOException {
    assertEquals(0, call("history", "check"), said(err));
    assertTrue(said(out).startsWith("history.db: whole; 0 runs, 60 photos, 60 rafts, 240 sites"));
    assertTrue(said(out).contains("No backups yet"), said(out));
    out.reset();
    assertEquals(0, call("history", "backup", path("copy.db")), said(err));
    assertTrue(Files.size(folder.resolve("copy.db")) > 0);
    assertEquals(2, call("history", "backup", path("copy.db")), "it is there already");
  }

  @Test
  void checkOfADamagedHistoryFailsAndSaysWhatToDo() throws IOException {
    Path file = folder.resolve("book/history.db");
    byte[] bytes = Files.readAllBytes(file);
    for (int i = 8 * 4096; i < 12 * 4096; i++) {
      bytes[i] = 0;
    }
    Files.write(file, bytes);

    assertEquals(3, call("history", "check"));

    assertTrue((said(out) + said(err)).contains("damaged"), said(out) + said(err));
  }

  @Test
  void compareSaysWhereNothingWasMeasuredTwice() throws IOException {
    assertEquals(0, call("history", "compare", "--out", path("compare.csv")), said(err));
    assertTrue(said(out).startsWith("No photo was measured by two programs or books"));
    assertEquals(1, text("compare.csv").lines().count());
  }

  /** Returns an area that levels off and scatters by 3 %, so that a curve can be fitted. */
  private static String levelling(String[] cells) {
    double area = Double.parseDouble(cells[3]);
    double scatter = 1 + 0.03 * Math.sin(cells[2].hashCode() + 7.0 * cells[0].hashCode());
    return String.format(java.util.Locale.ROOT, "%.2f", scatter * area / (1 + area / 60));
  }

  private void enter(String at, String photo) throws IOException {
    try (History history = History.open(folder.resolve("book/history.db"))) {
      var sha256 = history.named(photo).get(0).measure().sha256();
      history.correct(
          List.of(
              new Correction(
                  0,
                  new Correction.Entry(OffsetDateTime.parse(at), "Ana", "test"),
                  new Correction.Exclude(new Correction.Photo(sha256, photo)))));
    }
  }

  private int amend(String... more) {
    List<String> call =
        Stream.of(
                Stream.of("amend"),
                Stream.of(more),
                Stream.of("--reason", "wrong tag", "--by", "Ana", "--book", path("book")))
            .flatMap(s -> s)
            .toList();
    return program(call.toArray(String[]::new));
  }

  private void judge(String to, String... more) {
    List<String> call =
        Stream.concat(
                Stream.of("judge", "--book", path("book"), "--on", LAST, "--out", path(to)),
                Stream.of(more))
            .toList();
    assertEquals(0, program(call.toArray(String[]::new)), said(err));
  }

  private int forecast(String to) {
    return program("forecast", "--book", path("book"), "--on", LAST, "--out", path(to));
  }

  private int call(String... args) {
    return program(
        Stream.concat(Stream.of(args), Stream.of("--book", path("book"))).toArray(String[]::new));
  }

  private int program(String... args) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    return Raftgauge.run(args, new BookWorkplace(), console);
  }

  /** Returns the rafts that were judged: those seen that evening. */
  private List<String> rafts(String results) throws IOException {
    return text(results + "/verdicts.csv")
        .lines()
        .filter(l -> l.startsWith("raft,"))
        .map(l -> l.split(",", -1)[3])
        .toList();
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private static String said(ByteArrayOutputStream stream) {
    return stream.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
  }
}
