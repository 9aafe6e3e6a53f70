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
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A farm of three cycles: weighings, a grader, forecasts with the evening and by the command. */
class ForecastCommandsTest {
  private static final LocalDate FIRST = LocalDate.of(2027, 1, 4);
  private static final LocalDate TONIGHT = FIRST.plusDays(2 * 40 + 24);
  private static final int SITES = 8;

  @TempDir Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final Random random = new Random(3);

  @BeforeEach
  void makeBook() throws IOException {
    write("book/book.yaml", "time_zone: UTC\nday_starts_at: \"04:00\"\n");
    write(
        "book/stations/bench.yaml",
        """
        kind: passing
        cameras: 1
        image_width_px: 2000
        image_height_px: 3000
        lens: {fx_px: 3000, fy_px: 3000, cx_px: 1000, cy_px: 1500}
        camera_height_mm: 1600
        """);
    write(
        "book/layouts.yaml",
        """
        layouts:
          eight:
            board: {width_mm: 600, length_mm: 1000}
            sites: {rows: 4, columns: 2, first_x_mm: 150, first_y_mm: 150, pitch_x_mm: 220, pitch_y_mm: 220}
            tag: {x_mm: 300, y_mm: 42, side_mm: 60}
        """);
    write(
        "book/crops.yaml",
        """
        crops:
          batavia:
            colour_model: green-leaf
            height_model: {scale_mm: 5, exponent: 0.5}
            harvest: {head_weight_g: 110, minimum_g: 80, ready_share: 0.8, window_dat: [20, 40], pack_g: 100}
        """);
    StringBuilder plantings =
        new StringBuilder(
            "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,"
                + "ended_on,lot\n");
    StringBuilder sites =
        new StringBuilder("raft,site,taken_at,projected_area_cm2,projected_area_se_cm2\n");
    StringBuilder weighings =
        new StringBuilder("raft,site,weighed_at,fresh_weight_g,top_height_mm,state\n");
    for (int cycle = 0; cycle < 3; cycle++) {
      LocalDate start = FIRST.plusDays(40L * cycle);
      for (int raft = 0; raft < 2; raft++) {
        boolean over = cycle < 2;
        plantings.append(
            "K-%d,P1,%d,batavia,,eight,,,%s,,%s,\n"
                .formatted(raft, raft, start, over ? start.plusDays(34) : ""));
        for (int site = 0; site < SITES; site++) {
          grow("K-" + raft, site, start, over ? 32 : 24, sites, weighings);
        }
      }
    }
    write("book/plantings.csv", plantings.toString());
    write("book/weighings.csv", weighings.toString());
    write(
        "book/harvests.csv",
        "raft,harvested_at,heads,total_weight_g\nK-0,"
            + FIRST.plusDays(40 + 31)
            + "T20:00,8,1100\n");
    write("sites.csv", sites.toString());
    assertEquals(0, run("import", at("sites.csv"), "--book", at("book")));
  }

  /** Grows a plant on a logistic curve; plants are weighed on days 20 to 30 of the second cycle. */
  private void grow(
      String raft,
      int site,
      LocalDate start,
      int last,
      StringBuilder sites,
      StringBuilder weighed) {
    double own = 0.15 * random.nextGaussian();
    String id = "" + (char) ('A' + site / 2) + (1 + site % 2);
    for (int age = 4; age <= last; age += 2) {
      double area = Math.exp(own) * 300 / (1 + Math.exp(-0.25 * (age + 0.75 - 20)));
      double seen = area * Math.exp(0.02 * random.nextGaussian());
      sites.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%sT18:00:00Z,%.2f,%.2f%n",
              raft,
              id,
              start.plusDays(age),
              seen,
              0.03 * seen));
      if (start.equals(FIRST.plusDays(40)) && age == 16 + 2 * site) {
        double gram = 0.2 * Math.pow(area, 1.15) * Math.exp(0.05 * random.nextGaussian());
        weighed.append(
            String.format(
                Locale.ROOT, "%s,%s,%sT19:00,%.1f,,whole%n", raft, id, start.plusDays(age), gram));
      }
    }
  }

  @Test
  void anEveningComesWithItsForecastAndWorklist() throws IOException {
    fitBefore(TONIGHT);
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("j")));
    assertEquals(0, run("forecast", "--book", at("book"), "--on", "" + TONIGHT, "--out", at("f")));

    for (String file : List.of("forecast.csv", "supply.csv", "plan.csv", "plan-totals.csv")) {
      assertEquals(read("f/" + file), read("j/" + file), file);
    }
    // Two rafts, a pond and a crop on fifteen days.
    assertEquals(4 * 15 + 1, lines("j/forecast.csv").size());
    String worklist = read("j/worklist.csv");
    assertTrue(worklist.contains("harvest") && worklist.contains("By the forecast"), worklist);
    // The last weighing is 40 days old: fresh ones are wanted.
    assertTrue(worklist.contains("The grader of batavia is to be checked"), worklist);
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
    // Its last weighing is at 16 + 2 * 7 days of the second cycle.
    LocalDate weighed = FIRST.plusDays(40 + 30);
    fitBefore(TONIGHT);
    out.reset();
    LocalDate on = weighed.minusDays(1);
    assertEquals(0, run("forecast", "--book", at("book"), "--on", "" + on, "--out", at("f")));
    assertEquals(0, run("judge", "--book", at("book"), "--on", "" + on, "--out", at("j")));

    String said = out.toString(StandardCharsets.UTF_8);
    assertTrue(
        said.contains("no weights of batavia: its grader knows more than the evening of " + on),
        said);
    assertTrue(said.contains("last weighing " + weighed + "T19:00Z) and is left out"), said);
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
