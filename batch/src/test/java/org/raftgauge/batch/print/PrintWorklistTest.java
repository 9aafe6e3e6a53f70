// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.HiddenRow;
import org.raftgauge.core.evening.Task;

class PrintWorklistTest {
  private static final LocalDate EVENING = LocalDate.of(2026, 4, 16);
  private static final Layout BOARD =
      new Layout(
          "deck-6",
          Optional.empty(),
          new Board(600, 400),
          new SiteGrid(2, 3, 120, 100, 180, 180, 0),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  @TempDir private Path folder;
  private Set<SiteId> planted = new HashSet<>(BOARD.grid().sites());

  private static Task inspect(String raft, String... sites) {
    List<SiteId> ids = List.of(sites).stream().map(SiteId::parse).toList();
    return new Task(
        Task.Action.INSPECT,
        2,
        new Task.Where("", "P1", "4", raft, ids),
        "It lags. Area: 38 % of the expected.",
        Optional.of(EVENING.plusDays(1)),
        "inspect-lagging/" + raft + "/2026-04-06/" + String.join("+", sites));
  }

  private Path print(Paper paper, List<Task> tasks) throws IOException {
    Path file = folder.resolve(paper + ".pdf");
    PrintWorklist.print(
        new PrintWorklist.Sheet(
            EVENING,
            "",
            tasks,
            List.of(),
            raft -> Optional.of(new PrintWorklist.Board(BOARD, planted))),
        paper,
        file);
    return file;
  }

  private static String text(Path file) throws IOException {
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      return new PDFTextStripper().getText(document);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Paper.class,
      names = {"A4", "LETTER"})
  void aTaskSaysWhatWhereWhyAndByWhen(Paper paper) throws IOException {
    String text = text(print(paper, List.of(inspect("DR-1", "B3"))));
    for (String said :
        List.of(
            "To do from Friday 17 April 2026",
            "page 1 of 1",
            "By Friday 17 April",
            "Inspect · raft DR-1",
            "pond P1, berth 4",
            "site B3",
            "It lags. Area: 38 % of the expected.",
            "inspect-lagging/DR-1/2026-04-06/B3")) {
      assertTrue(text.contains(said), said + " is not in " + text);
    }
  }

  @Test
  void aSiteThatIsMeantHasAnEmptyBoxAtItsPlaceAndTheOthersADot() throws IOException {
    double dpi = 254;
    try (Printed printed = new Printed(print(Paper.A4, List.of(inspect("DR-1", "B3"))), dpi)) {
      var picture = printed.picture(0);
      // By hand: pitch 180 mm on 9 mm, so 1 : 20; the plan is 600 / 20 + 5 = 35 mm wide and ends at
      // 210 - 15 = 195 mm; the first task begins at 15 + 2 * 5.5 + 2 + 9 = 37 mm. B3 is at
      // (480, 280) mm of the board, A1 at (120, 100) mm; ten dots a mm.
      int x0 = 1600 + 50;
      int y0 = 370 + 50;
      int[] boxed = {x0 + 240, y0 + 140};
      int[] dotted = {x0 + 60, y0 + 50};
      assertTrue((picture.getRGB(dotted[0], dotted[1]) & 0xff) < 60, "a dot at A1");
      assertTrue((picture.getRGB(boxed[0], boxed[1]) & 0xff) > 240, "room to tick at B3");
      assertTrue((picture.getRGB(boxed[0] - 20, boxed[1]) & 0xff) < 128, "the box's left side");
      assertTrue((picture.getRGB(boxed[0], boxed[1] + 20) & 0xff) < 128, "the box's lower side");
    }
  }

  @Test
  void aHoleWithoutAPlantIsACrossAndTheCornerNearestA1IsBlack() throws IOException {
    planted.remove(SiteId.parse("A1"));
    try (Printed printed = new Printed(print(Paper.A4, List.of(inspect("DR-1", "B3"))), 254)) {
      var picture = printed.picture(0);
      // The places are those of the test above.
      int x0 = 1600 + 50;
      int y0 = 370 + 50;
      assertTrue((picture.getRGB(x0 + 60, y0 + 50) & 0xff) < 60, "a cross at A1: its middle");
      assertTrue((picture.getRGB(x0 + 66, y0 + 50) & 0xff) > 200, "between its arms");
      assertTrue((picture.getRGB(x0 + 150, y0 + 50) & 0xff) < 60, "a black dot at A2");
      assertTrue((picture.getRGB(x0 + 8, y0 + 8) & 0xff) < 60, "the corner of A1");
      assertTrue((picture.getRGB(x0 + 292, y0 + 8) & 0xff) > 240, "no other corner");
    }
  }

  @Test
  void plantsToWeighHaveALineForTheirGramsEach() throws IOException {
    Task weigh =
        new Task(
            Task.Action.WEIGH,
            3,
            new Task.Where("", "P1", "4", "DR-1", List.of(SiteId.parse("A1"), SiteId.parse("B3"))),
            "The grader is to be checked.",
            Optional.empty(),
            "weigh-kale/DR-1/2026-04-06");
    String text = text(print(Paper.A4, List.of(weigh)));
    assertTrue(text.contains("No fixed day"), text);
    assertTrue(text.contains("A1 g B3 g"), text);
  }

  @Test
  void workIsPartedByItsDaysAndWhatIsLateIsDueTomorrow() throws IOException {
    Task late =
        new Task(
            Task.Action.HARVEST,
            2,
            new Task.Where("", "P1", "4", "DR-2", List.of()),
            "Its planned harvest day; the day is past.",
            Optional.of(EVENING.minusDays(3)),
            "harvest/DR-2/2026-03-01");
    String text = text(print(Paper.A4, List.of(inspect("DR-1", "B3"), late)));
    assertTrue(text.contains("pond P1, berth 4, was due Mon 13 Apr"), text);
    assertEquals(2, text.split("By ", -1).length, "one title: " + text);
  }

  @Test
  void whatIsHiddenIsCountedOnTheSheet() throws IOException {
    Path file = folder.resolve("hidden.pdf");
    List<HiddenRow> hidden = List.of(new HiddenRow("a/b/c", Optional.of(EVENING.plusDays(4))));
    PrintWorklist.print(
        new PrintWorklist.Sheet(EVENING, "", List.of(), hidden, raft -> Optional.empty()),
        Paper.A4,
        file);
    assertTrue(text(file).contains("Nothing else to do."), text(file));
    assertTrue(
        text(file).contains("Not on this sheet: 1 row is hidden: 1 put off until 20 Apr 2026."),
        text(file));
  }

  @Test
  void manyTasksRunOverPagesAndNoneIsLost() throws IOException {
    List<Task> tasks = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      tasks.add(inspect("DR-" + i, "A1"));
    }
    String text = text(print(Paper.LETTER, tasks));
    for (int i = 0; i < 60; i++) {
      assertTrue(text.contains("raft DR-" + i), "DR-" + i);
    }
    // By hand: a task takes 36.4 mm, a page has 279.4 - 28 - 15 mm less 9 for a title: six tasks.
    assertTrue(text.contains("page 10 of 10"), text);
  }

  @Test
  void longNamesAreBrokenAndSignsThatTheFontLacksAreMarked() throws IOException {
    String name = "X".repeat(32);
    String text = text(print(Paper.A4, List.of(inspect(name, "A1"), inspect("筏-7", "A1"))));
    assertTrue(text.replaceAll("\\s", "").contains("raft" + name), text);
    assertTrue(text.contains("raft ?-7"), text);
  }

  @Test
  void nothingToDoIsSaid() throws IOException {
    assertTrue(text(print(Paper.A4, List.of())).contains("Nothing stands out."));
  }

  @Test
  void theSameTasksGiveTheSameBytes() throws IOException {
    byte[] first = Files.readAllBytes(print(Paper.A4, List.of(inspect("DR-1", "A1"))));
    assertArrayEquals(first, Files.readAllBytes(print(Paper.A4, List.of(inspect("DR-1", "A1")))));
    assertEquals('%', first[0]);
  }

  @Test
  void raftsThatNobodyPhotographedAreTickedTogether() throws IOException {
    List<Task> tasks = new ArrayList<>();
    for (int i = 1; i <= 250; i++) {
      tasks.add(unseen("DR-" + i, "P1", i));
    }
    tasks.add(unseen("DR-900", "P2", 1));
    Path file = print(Paper.A4, tasks);
    String text = text(file);
    // 250 rafts of a pond in parts of a hundred; one of another pond by itself.
    assertTrue(text.contains("100 rafts that were expected and not seen"), text);
    assertTrue(text.contains("50 rafts that were expected and not seen"), text);
    assertTrue(text.contains("DR-1, berth 1") && text.contains("DR-250, berth 250"), text);
    assertTrue(text.contains("Photograph · raft DR-900"), text);
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      assertTrue(document.getNumberOfPages() <= 4, document.getNumberOfPages() + " pages");
    }
  }

  private static Task unseen(String raft, String pond, int berth) {
    return new Task(
        Task.Action.PHOTOGRAPH_AT_ALL,
        1,
        new Task.Where("", pond, "" + berth, raft, List.of()),
        "Expected, not seen. Never seen.",
        Optional.of(EVENING.plusDays(1)),
        "photograph/" + raft + "/" + EVENING);
  }
}
