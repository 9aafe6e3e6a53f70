// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Taught colour models as the book names, reads and refuses them. */
class TaughtColourBookTest {
  private static final String CROPS =
      """
      crops:
        basil:
          colour_model: my-basil
          height_model: {scale_mm: 5.2, exponent: 0.5}
        lettuce:
          colour_model: green-leaf
          height_model: {scale_mm: 2, exponent: 0.5}
      """;

  @TempDir Path folder;

  /** Weights 1 to n. */
  private static String numbers(int n) {
    return IntStream.rangeClosed(1, n)
        .mapToObj(Integer::toString)
        .collect(Collectors.joining(", ", "[", "]"));
  }

  private static String model(int terms) {
    return "crop: basil\n"
        + "made_by: raftgauge 0.1.0\n"
        + "least: [-1, -1, -4]\n"
        + "most: [1, 2, 0]\n"
        + "weights:\n"
        + ("  green: " + numbers(terms) + "\n")
        + ("  board: " + numbers(20) + "\n");
  }

  /** A look at open ground with units of so many numbers. */
  private static String ground(int... units) {
    return "ground:\n"
        + ("  middle: " + numbers(37) + "\n")
        + ("  spread: " + numbers(37) + "\n")
        + "  units:\n"
        + IntStream.of(units)
            .mapToObj(n -> "    - " + numbers(n) + "\n")
            .collect(Collectors.joining())
        + ("  output: " + numbers(units.length + 1) + "\n");
  }

  private BookFolder book(String model) {
    return BookFolder.in(folder).with("crops.yaml", CROPS).with("colour/my-basil.yaml", model);
  }

  @Test
  void theModelThatACropNamesIsReadWithIt() {
    CropBook book = book(model(20) + ground(38, 38)).sound();
    TaughtColour taught = book.crops().get("basil").taught().orElseThrow();
    assertEquals("my-basil", taught.name());
    assertEquals(List.of(-1.0, -1.0, -4.0), taught.least());
    assertEquals(List.of(1.0, 2.0, 0.0), taught.most());
    assertEquals(List.of(Tissue.GREEN, Tissue.BOARD), List.copyOf(taught.weights().keySet()));
    assertEquals(20.0, taught.weights().get(Tissue.GREEN).get(19));
    TaughtGround ground = taught.ground().orElseThrow();
    assertEquals(37, ground.middle().size());
    assertEquals(2.0, ground.spread().get(1));
    assertEquals(38.0, ground.units().get(1).get(37));
    assertEquals(List.of(1.0, 2.0, 3.0), ground.output());
    assertEquals(Optional.empty(), book.crops().get("lettuce").taught());
  }

  @Test
  void theTaughtModelsThatComeWithTheProgramAreReadWhereACropNamesThem() {
    String crops =
        CROPS.replace("my-basil", "red-leaf-taught").replace("green-leaf", "green-leaf-taught");
    CropBook book = BookFolder.in(folder).with("crops.yaml", crops).sound();
    TaughtColour red = book.crops().get("basil").taught().orElseThrow();
    TaughtColour green = book.crops().get("lettuce").taught().orElseThrow();
    assertEquals("red-leaf-taught", red.name());
    assertTrue(red.weights().containsKey(Tissue.RED));
    assertEquals("green-leaf-taught", green.name());
    assertTrue(green.weights().containsKey(Tissue.GREEN));
  }

  @Test
  void aModelWithoutGroundKnowsNoOpenGround() {
    assertEquals(
        Optional.empty(),
        book(model(20)).sound().crops().get("basil").taught().orElseThrow().ground());
  }

  @Test
  void aBrokenLookAtOpenGroundIsReportedWithItsPlace() {
    assertEquals(
        List.of(
            "colour/my-basil.yaml:13:7: ground.units[1]: the list has 37 values; write 38 numbers",
            "colour/my-basil.yaml:14:11: ground.output: the list has 3 values; write 2 numbers"),
        book(model(20) + ground(38, 37)).problems());
    assertEquals(
        List.of("colour/my-basil.yaml:9:3: ground: the key spread is missing; add spread: ..."),
        book(model(20) + ground(38).replaceFirst(" *spread: .*\n", "")).problems());
    assertEquals(
        List.of(
            "colour/my-basil.yaml:8:9: ground: the look at open ground was taught by an earlier"
                + " version; teach it again with raftgauge teach, or restore the file"),
        book(model(20) + "ground: " + numbers(14) + "\n").problems());
  }

  @Test
  void aChangedWeightChangesWhatTheCropPrints() {
    // The settings hash of a photo is made of what the crops print.
    String before = book(model(20)).sound().crops().get("basil").toString();
    String after =
        book(model(20).replace("green: [1,", "green: [1.5,"))
            .sound()
            .crops()
            .get("basil")
            .toString();
    assertNotEquals(before, after);
    assertEquals(before, book(model(20)).sound().crops().get("basil").toString());
  }

  @Test
  void aMissingModelIsNamedWithTheNearestThatThereIs() {
    List<String> problems =
        BookFolder.in(folder)
            .with("crops.yaml", CROPS.replace("my-basil", "my-basill"))
            .with("colour/my-basil.yaml", model(20))
            .problems();
    assertEquals(
        List.of(
            "crops.yaml:3:19: crops.basil.colour_model: the colour model \"my-basill\" is unknown;"
                + " did you mean \"my-basil\"? known: green-leaf, red-leaf,"
                + " green-leaf-taught, red-leaf-taught, my-basil"),
        problems);
  }

  @Test
  void aBrokenModelIsReportedWithItsPlaceAndTheCropIsLeftWithoutIt() {
    BookFolder book = book(model(19));
    assertEquals(
        List.of(
            "colour/my-basil.yaml:6:10: weights.green: the list has 19 values; write 20 numbers"),
        book.problems());
    Crop basil = book.read().book().crops().get("basil");
    assertEquals("my-basil", basil.colourModel());
    assertEquals(Optional.empty(), basil.taught());
  }

  @Test
  void everyKindOfBrokenModelIsSaid() {
    assertTrue(
        book(model(20).replace("  board:", "  boart:"))
            .problems()
            .get(0)
            .startsWith(
                "colour/my-basil.yaml:7:3: weights.boart: the tissue \"boart\" is unknown; did you"
                    + " mean \"board\"?"));
    assertEquals(
        List.of(
            "colour/my-basil.yaml:1:1: the weights tell no leaf from what is not; teach it again"
                + " with raftgauge teach, or restore the file"),
        book(model(20).replace("  board:", "  pale:")).problems());
    assertEquals(
        List.of(
            "colour/my-basil.yaml:1:1: most is not over least; teach it again with raftgauge teach,"
                + " or restore the file"),
        book(model(20).replace("most: [1,", "most: [-1,")).problems());
    assertEquals(
        List.of("colour/my-basil.yaml:1:1: the key least is missing; add least: ..."),
        book(model(20).replaceFirst("least: .*\n", "")).problems());
  }

  @Test
  void otherFilesOfTheFolderAreSaidNotToBeRead() {
    List<String> problems = book(model(20)).with("colour/notes.txt", "x\n").problems();
    assertEquals(
        List.of(
            "colour/notes.txt: the file is not read; give it the ending .yaml, or move it away"),
        problems);
    assertEquals(
        List.of(
            "colour/red-leaf.yaml: the name is that of a built-in colour model; rename the file"),
        book(model(20))
            .without("colour/notes.txt")
            .with("colour/red-leaf.yaml", model(20))
            .problems());
  }

  @Test
  void recordsOfTheWrongSizeAreRefused() {
    List<Double> three = List.of(0.0, 0.0, 0.0);
    assertEquals(
        "each tissue must have 20 weights",
        assertThrows(
                IllegalArgumentException.class,
                () ->
                    new TaughtColour(
                        "x", three, three, Map.of(Tissue.GREEN, List.of(1.0)), Optional.empty()))
            .getMessage());
    assertEquals(
        "middle and spread must hold 37 numbers each",
        assertThrows(
                IllegalArgumentException.class,
                () -> new TaughtGround(three, three, List.of(three), three))
            .getMessage());
    List<Double> ones = Collections.nCopies(37, 1.0);
    assertEquals(
        "each unit must have 38 numbers",
        assertThrows(
                IllegalArgumentException.class,
                () -> new TaughtGround(ones, ones, List.of(three), three))
            .getMessage());
    assertEquals(
        "output must have a number a unit and one more",
        assertThrows(
                IllegalArgumentException.class,
                () -> new TaughtGround(ones, ones, List.of(Collections.nCopies(38, 1.0)), three))
            .getMessage());
    assertEquals(
        "least and most must hold 3 numbers each",
        assertThrows(
                IllegalArgumentException.class,
                () -> new TaughtColour("x", List.of(), three, Map.of(), Optional.empty()))
            .getMessage());
  }
}
