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
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.SmallFarm;

/** Measures made elsewhere, taken in, judged and held against the grower's calls. */
class ImportJudgeAgreeTest {

  @TempDir Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  /** Six rafts of four plants; A1 of K-0 grows to half of the others. */
  @BeforeEach
  void makeBook() throws IOException {
    SmallFarm.writeBook(folder.resolve("book"));
    write("sites.csv", SmallFarm.measures(10));
  }

  @Test
  void importTakesEachRaftAndTimeAsAPhotoAndTwiceAddsNothing() {
    assertEquals(0, imported());
    // 11 evenings of 6 rafts of 4 sites.
    assertEquals("Imported 66 photos with 264 sites; 0 photos known already\n", text(out));
    out.reset();
    assertEquals(0, imported());
    assertEquals("Imported 0 photos with 0 sites; 66 photos known already\n", text(out));
  }

  @Test
  void rowsInAnotherOrderWithMoreBlankColumnsAreTheSamePhotos() throws IOException {
    imported();
    out.reset();
    List<String> lines = SmallFarm.measures(10).lines().toList();
    StringBuilder turned = new StringBuilder("station," + SmallFarm.HEAD);
    for (int i = lines.size() - 1; i > 0; i--) {
      turned.append("," + lines.get(i) + "\n");
    }
    write("sites.csv", turned.toString());
    assertEquals(0, imported());
    assertEquals("Imported 0 photos with 0 sites; 66 photos known already\n", text(out));
  }

  @Test
  void judgeFindsTheLaggingSiteAndPublishesTheFolder() throws IOException {
    imported();
    out.reset();
    assertEquals(0, judge("2027-03-10", "out"), text(err));
    List<String> written = files("out");
    assertTrue(
        written.containsAll(
            List.of(
                "curves.csv",
                "forecast.csv",
                "plan-totals.csv",
                "plan.csv",
                "plots/growth-K-0.svg",
                "ponds/pond-P1.json",
                "ponds/pond.schema.json",
                "run.json",
                "supply.csv",
                "verdicts.csv",
                "worklist-a4.pdf",
                "worklist-letter.pdf",
                "worklist.csv")),
        written.toString());
    List<String> said = text(out).lines().toList();
    assertEquals("Evening  2027-03-10", said.get(0));
    assertEquals("Verdicts 1 lagging, 23 on-track (sites)", said.get(1));
    assertTrue(
        said.get(3).startsWith("  Inspect raft K-0 (pond P1), site A1 by 2027-03-11."),
        said.get(3));
  }

  @Test
  void aPondsFileFollowsItsSchemaAndSaysWhatTheWorklistSays() throws IOException {
    imported();
    judge("2027-03-10", "out");
    String json = read("out/ponds/pond-P1.json");
    assertEquals(Set.of(), PondSchema.wrong(read("out/ponds/pond.schema.json"), json));
    assertTrue(json.contains("\"item\": \"inspect-lagging/K-0/2027-03-01/A1\""), json);
    // 23 of the 24 plants are on track, three of them on K-0.
    assertTrue(json.contains("\"lagging\": 1,\n        \"on-track\": 3"), json);
  }

  @Test
  void theSchemaRefusesWhatIsNotPromised() throws IOException {
    imported();
    judge("2027-03-10", "out");
    String schema = read("out/ponds/pond.schema.json");
    String json = read("out/ponds/pond-P1.json");
    for (String wrong :
        List.of(
            json.replace("\"evening\": \"2027-03-10\"", "\"evening\": \"tonight\""),
            json.replace("\"pond\": ", "\"ec_set_point\": 1.8, \"pond\": "),
            json.replace("\"verdict\": \"lagging\"", "\"verdict\": \"sick\""),
            json.replace("_by_a_person\": true", "_by_a_person\": false"),
            json.replaceFirst("\"rafts\": ", "\"boards\": "))) {
      assertFalse(wrong.equals(json), "the text was not found");
      assertFalse(PondSchema.wrong(schema, wrong).isEmpty(), "accepted: " + wrong);
    }
  }

  @Test
  void judgingAgainGivesTheSameBytesWhateverCameLater() throws IOException {
    write("sites.csv", SmallFarm.measures(8));
    imported();
    judge("2027-03-09", "before");
    write("sites.csv", SmallFarm.measures(10));
    imported();
    assertEquals(0, judge("2027-03-09", "after"), text(err));
    for (String table : List.of("verdicts.csv", "curves.csv", "worklist.csv", "forecast.csv")) {
      assertEquals(read("before/" + table), read("after/" + table), table);
    }
    assertEquals(0, judge("2027-03-11", "after"), "earlier results give way");
    assertFalse(read("before/verdicts.csv").equals(read("after/verdicts.csv")));
  }

  @Test
  void wholeTableOfARunComesBackAsItWas() throws IOException {
    write(
        "sites.csv",
        "photo,station,raft,site,taken_at,projected_area_cm2,projected_area_se_cm2,closed,reason",
        "p1.jpg,bench,K-1,A1,2027-03-05T18:00,20.5,0.4,true,",
        "p1.jpg,bench,K-1,A2,2027-03-05T18:00,,,,a hose lies on it",
        "p1.jpg,bench,K-2,A1,2027-03-05T18:00,21,0.4,false,");
    assertEquals(0, imported());
    assertEquals("Imported 1 photo with 3 sites; 0 photos known already\n", text(out));
    judge("2027-03-05", "out");
    String verdicts = read("out/verdicts.csv");
    assertTrue(verdicts.contains("site,bench,P1,K-1,A2,"), verdicts);
    assertTrue(verdicts.contains(",held,,,"), verdicts);
    assertTrue(read("out/curves.csv").contains("every photo is a lower bound"), "closed is kept");
  }

  @Test
  void everyMistakeOfTheFileIsSaidAtOnceWithLineAndColumnAndNothingIsWritten() throws IOException {
    write(
        "sites.csv",
        "raft,site,taken_at,projected_area_cm2,projected_area",
        "K-1,A1,2027-03-05T18:00,20.5,",
        "K-1,A1,2027-03-05T18:00,20.6,",
        "K-9,A1,2027-03-05T18:00,20.5,",
        "K-1,C7,2027-03-05T18:00,20.5,",
        "K-1,A2,yesterday,20.5,",
        "K-1,B1,2027-03-05T18:00,-3,",
        "K-1,B2,2027-03-05T18:00,,");
    assertEquals(2, imported());
    List<String> said = text(err).lines().toList();
    assertTrue(
        said.get(0).startsWith("sites.csv:1: column projected_area: the column is unknown; "),
        said.get(0));
    assertTrue(said.get(0).contains("known: photo, station, raft, "), said.get(0));
    assertEquals(
        "sites.csv:3: column site: A1 stands twice in photo \"K-1 2027-03-05T18:00Z\"; keep one row",
        said.get(1));
    assertTrue(
        said.get(2).startsWith("sites.csv:4: column raft: the raft \"K-9\" is unknown; "),
        said.get(2));
    assertEquals(
        "sites.csv:5: column site: layout small-4 has no site C7; write one of 2 rows and 2 columns",
        said.get(3));
    assertEquals(
        "sites.csv:6: column taken_at: \"yesterday\" is not a time; write date and time, as in"
            + " 2026-04-06T18:00",
        said.get(4));
    assertTrue(said.get(5).startsWith("sites.csv:7: column projected_area_cm2: "), said.get(5));
    assertEquals(
        "sites.csv:8: column projected_area_cm2: the cell is blank; fill it in, or say why in"
            + " reason",
        said.get(6));
    assertFalse(Files.exists(folder.resolve("book/history.db")));
  }

  @Test
  void onePhotoHasOneTime() throws IOException {
    write(
        "sites.csv",
        "photo,raft,site,taken_at,projected_area_cm2",
        "p,K-1,A1,2027-03-05T18:00,20",
        "p,K-2,A1,2027-03-05T19:00,20");
    assertEquals(2, imported());
    assertEquals(
        "sites.csv:3: column taken_at: photo \"p\" has another time above; give it one time\n",
        text(err));
  }

  @Test
  void judgeWithoutAHistorySaysWhatToDo() {
    assertEquals(2, judge("2027-03-10", "out"));
    assertEquals(
        "BOOK "
            + folder.resolve("book")
            + ": has no history yet; run it over photos, or import measures, first\n",
        text(err));
  }

  @Test
  void judgeLeavesAForeignFolderAlone() throws IOException {
    imported();
    write("out/letter.txt", "mine");
    assertEquals(2, judge("2027-03-10", "out"));
    assertTrue(text(err).contains("holds \"letter.txt\", which no earlier run wrote"), text(err));
    assertEquals(List.of("letter.txt"), files("out"));
  }

  @Test
  void agreeShowsTableKappaAndDifferences() throws IOException {
    imported();
    write(
        "book/calls.csv",
        "raft,site,called_on,call",
        "K-0,A1,2027-03-09,lagging",
        "K-0,A1,2027-03-10,on-track",
        "K-1,A1,2027-03-09,on-track",
        "K-2,B1,2027-03-10,on-track");
    out.reset();
    assertEquals(0, run("agree", "--book", path("book"), "--out", path("agreed")), text(err));
    List<String> said = text(out).lines().toList();
    assertEquals("Calls    4, 4 of them photographed", said.get(0));
    assertEquals("Agreed   3 of 4", said.get(1));
    // By hand: agreement 0.75; chance 1/4 * 2/4 + 3/4 * 2/4 = 0.5; kappa 0.5.
    assertTrue(said.get(2).startsWith("Kappa    0.50 (95 % interval "), said.get(2));
    assertEquals(
        "         so few calls tell little, however they agree: some twenty an evening do",
        said.get(3));
    assertEquals("  grower \\ program    lagging  on-track", said.get(4));
    assertEquals("  lagging                   1         0", said.get(5));
    assertEquals("  on-track                  1         2", said.get(6));
    assertTrue(
        text(out)
            .contains(
                "Where they differ:\n  2027-03-10 K-0 A1: grower on-track, program lagging ("),
        text(out));
    assertEquals(List.of("agree.csv", "agree.txt", "run.json"), files("agreed"));
    assertTrue(
        read("agreed/agree.csv").contains(",no run kept a picture of the board"),
        "imported measures have no pictures");
  }

  /** A least-squares fit without residuals has an infinite likelihood, which no table may hold. */
  @Test
  void plantsOfTheSameAreaEveryEveningAreJudgedToo() throws IOException {
    for (String area : List.of("20", "0.0001", "1000000")) {
      String same = SmallFarm.measures(10).replaceAll("Z,[0-9.]+", "Z," + area);
      write("sites.csv", same.replace("T18:00:00Z", "T18:0" + area.length() % 10 + ":00Z"));
      assertEquals(0, imported(), text(err));
      assertEquals(0, judge("2027-03-11", "out"), area + ": " + text(err));
      for (String table : List.of("verdicts.csv", "curves.csv", "forecast.csv")) {
        assertFalse(read("out/" + table).matches("(?s).*(NaN|Infinity).*"), table);
      }
    }
  }

  @Test
  void agreeSaysNothingWhereItsFolderIsRefused() throws IOException {
    imported();
    write("book/calls.csv", "raft,site,called_on,call", "K-0,A1,2027-03-10,on-track");
    out.reset();
    assertEquals(2, run("agree", "--book", path("book"), "--out", path("book")));
    assertTrue(text(err).contains("holds the book; give an OUT of its own"), text(err));
    assertEquals("", text(out));
  }

  @Test
  void agreeWithoutCallsSaysWhatToWrite() {
    imported();
    assertEquals(2, run("agree", "--book", path("book")));
    assertTrue(
        text(err).contains("has no calls; write the head grower's own words into calls.csv"),
        text(err));
  }

  @Test
  void helpOfEachCommandHasAnExample() {
    for (String command : List.of("run", "check", "import", "judge", "agree")) {
      out.reset();
      assertEquals(0, run("help", command));
      assertTrue(text(out).contains("  raftgauge " + command + " "), text(out));
    }
    out.reset();
    assertEquals(0, run("help", "grader", "picks"));
    assertTrue(text(out).contains("  raftgauge grader picks --book"), text(out));
  }

  private int imported() {
    return run("import", path("sites.csv"), "--book", path("book"));
  }

  private int judge(String on, String to) {
    return run("judge", "--book", path("book"), "--on", on, "--out", path(to));
  }

  private int run(String... args) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    return Raftgauge.run(args, new BookWorkplace(), console);
  }

  private static String text(ByteArrayOutputStream stream) {
    return stream.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private String read(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private void write(String name, String... lines) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, String.join("\n", lines) + "\n");
  }

  private List<String> files(String name) throws IOException {
    Path root = folder.resolve(name);
    try (Stream<Path> walk = Files.walk(root)) {
      return walk.filter(Files::isRegularFile)
          .map(f -> root.relativize(f).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }
}
