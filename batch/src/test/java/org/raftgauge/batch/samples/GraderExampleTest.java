// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.grade.BookGraders;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Traits;
import org.raftgauge.core.problem.InputException;

/**
 * Runs the commands of calibration/GRADER.md's example, in a folder of their own, on the sample
 * photos and invented weighings.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class GraderExampleTest {
  private static final Path SAMPLES = Readme.ROOT.resolve("sample-images");
  private static final Path GUIDE = Readme.ROOT.resolve("calibration/GRADER.md");
  private static final Path TABLE = Readme.ROOT.resolve("calibration/grader-example/weighings.csv");
  private static final String BOOK = "grader-book";

  private Path book;
  private Readme.Said fitted;

  @BeforeAll
  void measureTheSamplesAndFit(@TempDir Path folder) throws IOException {
    book = folder.resolve(BOOK);
    try (Stream<Path> files = Files.walk(SAMPLES.resolve("book"))) {
      for (Path file : files.filter(f -> f.toString().matches(".*\\.(yaml|csv)")).toList()) {
        Path copy = book.resolve(SAMPLES.resolve("book").relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
    Files.copy(TABLE, book.resolve("weighings.csv"), StandardCopyOption.REPLACE_EXISTING);
    Readme.Said run = run("raftgauge run");
    assertEquals(0, run.code(), run.err());
    fitted = run("raftgauge grader fit");
  }

  /** Runs the guide's command that begins so, with the book in the test's folder. */
  private Readme.Said run(String begins) throws IOException {
    List<String> commands =
        Files.readString(GUIDE).lines().filter(l -> l.startsWith("batch/" + begins)).toList();
    assertEquals(1, commands.size(), commands.toString());
    List<String> arguments = new ArrayList<>();
    for (String word : Readme.arguments(commands.get(0))) {
      arguments.add(
          word.startsWith(BOOK)
              ? book.resolveSibling(word.replace('/', java.io.File.separatorChar)).toString()
              : word);
    }
    return Readme.run(arguments);
  }

  @Test
  void fitFindsTheInventedRelationAndWritesItsFiles() throws IOException, InputException {
    assertEquals(0, fitted.code(), fitted.err());
    Grader grader = grader();
    RegimeFit open = grader.fit(Regime.OPEN).orElseThrow();
    // The table was made with w = 0.085 A^1.28 from exact areas; the photos' areas are some 5 % off
    // and the plants are weighed half a day after the photo, so within a sixth.
    double made = 0.085 * Math.pow(120, 1.28);
    double told = open.predict(Traits.ofArea("Marle", 120)).orElseThrow().medianG();
    assertEquals(made, told, made / 6);
    assertTrue(open.numbers().weighings() >= 18, "open: " + open.numbers().weighings());
    assertTrue(open.numbers().leftOut().meanShare() < 0.15, open.numbers().leftOut().toString());
    for (String file :
        List.of(
            "butterhead.yaml",
            "butterhead.html",
            "butterhead-open-fit.svg",
            "butterhead-open-residuals.svg",
            "butterhead-open-agreement.svg")) {
      assertTrue(Files.size(book.resolve("graders").resolve(file)) > 1000, file);
    }
    assertTrue(
        fitted
            .out()
            .contains("To use it, write under butterhead in crops.yaml: grader: butterhead"),
        fitted.out());
  }

  @Test
  void summarySaysThatWeightsAreEstimatesAndHoldsThePlots() throws IOException {
    String page = Files.readString(book.resolve("graders/butterhead.html"));
    assertTrue(page.contains("estimates from pictures, not legal-for-trade weighing"));
    assertTrue(page.contains("food-safety plan"));
    assertTrue(page.split("<svg", -1).length >= 4, "three plots at least");
    assertFalse(page.contains("http-equiv") || page.contains("src=\"http"), "self-contained");
  }

  @Test
  void heightsGiveAHeightModelWithItsUncertainty() throws IOException, InputException {
    assertTrue(grader().height().isPresent());
    assertTrue(grader().height().get().heights() >= 30);
    assertTrue(grader().height().get().meanToTopSe() > 0.05, "a guess says so");
    assertTrue(
        Files.readString(book.resolve("graders/butterhead.html")).contains("height_model: {"));
  }

  @Test
  void checkOfTheSameRelationKeepsTheGrader() throws IOException {
    Readme.Said said = run("raftgauge grader check");
    assertEquals(0, said.code(), said.err());
    assertTrue(
        said.out().contains("closed: keep (") || said.out().contains("open: keep ("), said.out());
    assertTrue(said.out().contains("drift (CUSUM, limit 5)"), said.out());
  }

  @Test
  void picksAreListedAndMapped() throws IOException {
    Readme.Said said = run("raftgauge grader picks");
    assertEquals(0, said.code(), said.err());
    List<String> lines = Files.readAllLines(book.resolve("picks/picks.csv"));
    assertEquals(
        "raft,site,pond,berth,crop,variety,closed,area_cm2,predicted_weight_g,part,parts,"
            + "weighed_at,fresh_weight_g,top_height_mm,state",
        lines.get(0));
    assertEquals(13, lines.size());
    assertTrue(lines.stream().anyMatch(l -> l.contains(",true,")), "closed sites are among them");
    String sheet = Files.readString(book.resolve("picks/picks.html"));
    assertTrue(sheet.contains("trimmed"), "the way of weighing is asked for: " + sheet);
    assertEquals(12, sheet.split("class=\"picked\"", -1).length - 1);
    assertFalse(
        sheet.contains("about ") || sheet.contains("cm\u00b2"), "nothing leans on a forecast");
    Readme.Said again = run("raftgauge grader picks");
    assertEquals(said.out(), again.out());
    assertEquals(lines, Files.readAllLines(book.resolve("picks/picks.csv")), "seeded");
  }

  @Test
  void cropThatNobodyWeighedIsRefusedInWords() {
    Readme.Said said =
        Readme.run(List.of("grader", "fit", "--book", book.toString(), "--crop", "frilled"));
    assertEquals(2, said.code());
    assertTrue(
        said.err()
            .contains(
                "No grader was made: 0 weighings of frilled could be joined with photos; a grader"
                    + " needs at least 8"),
        said.err());
    assertFalse(Files.exists(book.resolve("graders/frilled.yaml")));
  }

  /** Every other light plant in ounces of 28.35 g, as a scale that was switched shows it. */
  @Test
  void graderOfMixedUnitsIsNoCheer(@TempDir Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(book)) {
      for (Path file : files.filter(f -> f.toString().matches(".*\\.(yaml|csv|db)")).toList()) {
        Path copy = folder.resolve(book.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
    List<String> mixed = new ArrayList<>(Files.readAllLines(TABLE));
    for (int i = 2; i < mixed.size(); i += 2) {
      String[] cells = mixed.get(i).split(",", -1);
      double g = Double.parseDouble(cells[3]);
      cells[3] = g < 80 ? String.format(Locale.ROOT, "%.2f", g / 28.35) : cells[3];
      mixed.set(i, String.join(",", cells));
    }
    Files.write(folder.resolve("weighings.csv"), mixed);
    Readme.Said said =
        Readme.run(List.of("grader", "fit", "--book", folder.toString(), "--crop", "butterhead"));
    assertEquals(0, said.code(), said.err());
    assertTrue(said.out().contains("Of no use: open sites from"), said.out());
    assertTrue(said.out().contains("whether every fresh_weight_g is in grams"), said.out());
    String unused = "Do not use it: mend weighings.csv, and fit again";
    assertTrue(said.out().contains(unused + "."), said.out());
    assertFalse(said.out().contains("To use it"), said.out());

    Path crops = folder.resolve("crops.yaml");
    String named = "  butterhead:\n    grader: butterhead\n";
    Files.writeString(crops, Files.readString(crops).replace("  butterhead:\n", named));
    said =
        Readme.run(List.of("grader", "fit", "--book", folder.toString(), "--crop", "butterhead"));
    assertTrue(
        said.out().contains(unused + "; until then take grader out of butterhead in crops.yaml."),
        said.out());
  }

  @Test
  void helpPagesFitTheScreen() {
    for (String command : List.of("fit", "check", "picks")) {
      Readme.Said said = Readme.run(List.of("grader", command, "--help"));
      assertEquals(0, said.code());
      assertTrue(said.out().lines().allMatch(line -> line.length() <= 80), said.out());
      assertTrue(said.out().contains("--book=BOOK"), said.out());
    }
    Readme.Said group = Readme.run(List.of("grader"));
    assertTrue(group.out().contains("not legal-for-trade weighing"), group.out());
    assertTrue(group.out().lines().allMatch(line -> line.length() <= 80), group.out());
  }

  @Test
  void wrongCropsAndTimesAreSaid() {
    Readme.Said said =
        Readme.run(List.of("grader", "fit", "--book", book.toString(), "--crop", "buterhead"));
    assertEquals(2, said.code());
    assertTrue(
        said.err()
            .contains(
                "--crop: no planting of crop \"buterhead\"; did you mean" + " \"butterhead\"?"),
        said.err());
    said =
        Readme.run(
            List.of(
                "grader",
                "check",
                "--book",
                book.toString(),
                "--crop",
                "butterhead",
                "--since",
                "yesterday"));
    assertEquals(2, said.code());
    assertTrue(said.err().contains("--since: \"yesterday\" is not a time"), said.err());
    said = Readme.run(List.of("grader", "check", "--book", book.toString(), "--crop", "basil"));
    assertTrue(
        said.err()
            .contains(
                "--crop: there is no grader of basil; make one with raftgauge grader" + " fit"),
        said.err());
  }

  @Test
  void bookThatNamesTheGraderReadsWithoutAProblem() throws IOException {
    Path crops = book.resolve("crops.yaml");
    String before = Files.readString(crops);
    try {
      Files.writeString(
          crops, before.replace("  butterhead:\n", "  butterhead:\n    grader: butterhead\n"));
      BookReading reading = CropBook.read(book);
      assertEquals(List.of(), reading.problems());
      assertEquals("butterhead", reading.book().crops().get("butterhead").grader().orElseThrow());
      Files.writeString(
          crops, before.replace("  butterhead:\n", "  butterhead:\n    grader: buterhead\n"));
      assertEquals(
          "crops.yaml:3:13: crops.butterhead.grader: there is no graders/buterhead.yaml, so this"
              + " crop gets no weights; did you mean \"butterhead\"? known: butterhead",
          CropBook.read(book).problems().get(0).toString());
    } finally {
      Files.writeString(crops, before);
    }
  }

  private Grader grader() throws InputException {
    return BookGraders.of(CropBook.read(book).book(), book, "butterhead").orElseThrow();
  }
}
