// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.GrownFarm;

/** A farm of three cycles: weighings, a grader, forecasts with the evening and by the command. */
class ForecastCommandsTest {
  private static final LocalDate FIRST = GrownFarm.FIRST;
  private static final LocalDate TONIGHT = GrownFarm.TONIGHT;

  @TempDir Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeEach
  void makeBook() throws IOException {
    GrownFarm.write(folder);
    assertEquals(0, run("import", at("sites.csv"), "--book", at("book")));
  }

  @Test
  void anEveningComesWithItsForecastAndWorklist() throws IOException {
    fitBefore(TONIGHT);
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("j")));
    assertEquals(0, run("forecast", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("f")));

    for (String file :
        List.of("forecast.csv", "supply.csv", "plan.csv", "plan-totals.csv", "remarks.txt")) {
      assertEquals(read("f/" + file), read("j/" + file), file);
    }
    // Two rafts, a pond and a crop on fifteen days.
    assertEquals(4 * 15 + 1, lines("j/forecast.csv").size());
    String worklist = read("j/worklist.csv");
    assertTrue(worklist.contains("harvest") && worklist.contains("By the forecast"), worklist);
    // The last weighing, that of the harvest, is 33 days old: fresh ones are wanted.
    assertTrue(
        worklist.contains("How areas of batavia become weights (its grader) is to be checked"),
        worklist);
  }

  @Test
  void withoutAGraderAnEveningTellsAreasOnly() throws IOException {
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("j")));

    String first = lines("j/forecast.csv").get(1);
    assertTrue(first.contains("no grader of batavia: area only"), first);
    assertEquals(1, lines("j/supply.csv").size());
    assertFalse(read("j/worklist.csv").contains("By the forecast"));
  }

  @Test
  void theEveningSaysWhatLightAndWaterYieldedWhereTheBookTellsThem() throws IOException {
    fitBefore(TONIGHT);
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("j")));
    assertFalse(Files.exists(folder.resolve("j/resources.csv")));

    StringBuilder climate = new StringBuilder("pond,date,dli_mol_m2,water_l\n");
    for (LocalDate day = FIRST; !day.isAfter(TONIGHT); day = day.plusDays(1)) {
      climate.append(",").append(day).append(",14,60\n");
    }
    write("book/climate.csv", climate.toString());
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("k")));
    assertEquals(0, run("look-back", "--book", at("book"), "--out", at("b")));
    assertEquals(read("b/resources.csv"), read("k/resources.csv"));
    assertEquals(2, lines("k/resources.csv").size(), read("k/resources.csv"));
  }

  @Test
  void aBrokenGraderCostsTheWeightsNotTheEvening() throws IOException {
    write("book/graders/batavia.yaml", "crop: batavia\nfits: nonsense\n");
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("j")));

    assertTrue(lines("j/forecast.csv").get(1).contains("area only"));
  }

  @Test
  void anEditedPlanIsAddedUpAndAWrongOneIsRefusedByLine() throws IOException {
    fitBefore(TONIGHT);
    write("plan.csv", "raft,harvest_on\nK-0," + TONIGHT.plusDays(3) + "\nK-1,\n");
    String[] call = {"forecast", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("f")};
    assertEquals(0, run(with(call, "--plan", at("plan.csv"))));
    List<String> totals = lines("f/plan-totals.csv");
    assertTrue(
        totals.stream().anyMatch(l -> l.contains("" + TONIGHT.plusDays(3)) && l.contains("K-0")));

    write("plan.csv", "raft,harvest_on\nK-7," + TONIGHT.plusDays(3) + "\n");
    err.reset();
    assertEquals(2, run(with(call, "--plan", at("plan.csv"))));
    assertTrue(
        err.toString(StandardCharsets.UTF_8)
            .contains("plan.csv:2: column raft: raft \"K-7\" has no forecast"),
        err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void anEditedPlanIsNotOverwrittenByAProposal() throws IOException {
    fitBefore(TONIGHT);
    String[] call = {"forecast", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("f")};
    assertEquals(0, run(call));
    assertEquals(0, run(call), "what nobody edited is written again");
    String edited = "raft,harvest_on\nK-0," + TONIGHT.plusDays(3) + "\nK-1,\n";
    write("f/plan.csv", edited);
    err.reset();

    assertEquals(2, run(call));

    assertEquals(
        "OUT "
            + at("f/plan.csv")
            + ": is there already and may hold your work; give it with --plan, name another folder,"
            + " or move it away",
        err.toString(StandardCharsets.UTF_8).strip());
    assertEquals(edited, Files.readString(Path.of(at("f/plan.csv"))));
    assertEquals(0, run(with(call, "--plan", at("f/plan.csv"))), "its totals");
  }

  @Test
  void theNextEveningsProposalTakesThePlaceOfOneThatNobodyEdited() throws IOException {
    fitBefore(TONIGHT.minusDays(1));
    String[] call = {"forecast", "--book", at("book"), "--on", "", "--out", at("f")};
    call[4] = TONIGHT.minusDays(1).toString();
    assertEquals(0, run(call), err.toString(StandardCharsets.UTF_8));
    List<String> first = lines("f/plan.csv");
    call[4] = TONIGHT.toString();
    assertEquals(0, run(call), err.toString(StandardCharsets.UTF_8));
    assertNotEquals(first, lines("f/plan.csv"));
    assertEquals(lines("f/plan.csv"), lines("f/plan-proposed.csv"));
  }

  @Test
  void lookBackHoldsForecastsAgainstHarvests() throws IOException {
    fitBefore(TONIGHT);
    out.reset();
    assertEquals(0, run("look-back", "--book", at("book"), "--out", at("b")));

    // One harvest at seven lead times; the grader knew weighings of later days at some.
    assertEquals(8, lines("b/look-back.csv").size());
    assertTrue(out.toString(StandardCharsets.UTF_8).contains("batavia, 5 days ahead, 1 harvests"));
  }

  @Test
  void aGraderThatKnowsMoreThanTheEveningIsLeftOut() throws IOException {
    // Plants were weighed until day 30 of the second cycle; its harvest of day 31 taught as well.
    LocalDate weighed = FIRST.plusDays(40 + 31);
    fitBefore(TONIGHT);
    out.reset();
    LocalDate on = weighed.minusDays(1);
    assertEquals(0, run("forecast", "--book", at("book"), "--on", "" + on, "--out", at("f")));
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + on, "--out", at("j")));

    String said = out.toString(StandardCharsets.UTF_8);
    assertTrue(
        said.contains("no weights of batavia: its grader knows more than the evening of " + on),
        said);
    // fitBefore dates the fit at noon of the day before, later than the last weighing.
    assertTrue(
        said.contains(
            "last weighing "
                + weighed
                + "T20:00Z) and is left out; it tells weights from the evening of "
                + TONIGHT.minusDays(1)
                + " on"),
        said);
    assertFalse(said.contains("fit one (grader fit)"), "a grader was fitted: " + said);
    assertTrue(lines("j/forecast.csv").get(1).contains("no grader of batavia: area only"));
    assertEquals(read("f/forecast.csv"), read("j/forecast.csv"));
  }

  @Test
  void aGraderFittedAfterTheEveningIsLeftOutThoughItsWeighingsAreOlder() throws IOException {
    fitBefore(TONIGHT.plusDays(2));
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("j")));
    assertTrue(lines("j/forecast.csv").get(1).contains("no grader of batavia: area only"));
    assertEquals(
        0, run("judge", "--book", at("book"), "--on", "" + TONIGHT.plusDays(1), "--out", at("k")));
    assertFalse(lines("k/forecast.csv").get(1).contains("area only"));
  }

  @Test
  void harvestedRaftsTeachTheGraderAndItSaysSo() throws IOException {
    assertEquals(0, run("grader", "fit", "--book", at("book"), "--crop", "batavia"));
    String with = read("book/graders/batavia.yaml");
    assertTrue(with.contains("; 1 harvested raft"), with);
    String said = out.toString(StandardCharsets.UTF_8);
    assertTrue(said.contains("open: 1 harvested raft weighed"), said);

    write("book/harvests.csv", "raft,harvested_at,heads,total_weight_g\n");
    assertEquals(0, run("grader", "fit", "--book", at("book"), "--crop", "batavia"));
    assertFalse(read("book/graders/batavia.yaml").contains("harvested"));
  }

  /** Fits a grader and dates it to the noon of the day before, whatever the clock says. */
  private void fitBefore(LocalDate day) throws IOException {
    assertEquals(0, run("grader", "fit", "--book", at("book"), "--crop", "batavia"));
    String file = "book/graders/batavia.yaml";
    String dated = "fitted_at: \"" + day.minusDays(1) + "T12:00Z\"";
    write(file, read(file).replaceFirst("(?m)^fitted_at: .*$", dated));
  }

  private static String[] with(String[] call, String... more) {
    List<String> all = new ArrayList<>(List.of(call));
    all.addAll(List.of(more));
    return all.toArray(String[]::new);
  }

  private String at(String name) {
    return folder.resolve(name).toString();
  }

  private String read(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  private List<String> lines(String name) throws IOException {
    return Files.readAllLines(folder.resolve(name));
  }

  private void write(String name, String text) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private int run(String... call) {
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    return Raftgauge.run(call, new BookWorkplace(), console);
  }
}
