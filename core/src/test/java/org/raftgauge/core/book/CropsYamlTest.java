// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reading of crops.yaml. */
class CropsYamlTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  @Test
  void cropIsReadWithDefaults() {
    CropBook book = book().sound();
    // The defaults of the design: mean_to_top 0.5, limits 0.78, 1.35 and 0.35.
    assertEquals(
        new Crop(
            "basil",
            "green-leaf",
            new HeightModel(5.2, 0.5, 0.5),
            OptionalDouble.empty(),
            new Crop.Limits(0.78, 1.35, 0.35)),
        book.crops().get("basil"));
  }

  @Test
  void varietyTakesFromItsCropWhatItDoesNotSay() {
    CropBook book =
        book()
            .with(
                "crops.yaml",
                """
                crops:
                  basil: {colour_model: green-leaf, height_model: {scale_mm: 5, exponent: 0.5}}
                  lettuce:
                    colour_model: green-leaf
                    height_model: {scale_mm: 2, exponent: 0.5}
                    emerged_by_das: 7
                    limits: {lagging_share: 0.7}
                    harvest: {head_weight_g: 150, minimum_g: 120, ready_share: 0.9, window_dat: [28, 38], trim_share: 0.05, pack_g: 150}
                    varieties:
                      red oak: {colour_model: red-leaf, limits: {ahead_share: 1.5}}
                """)
            .plantings("R3,P1,3,lettuce,red oak,strip,,,2026-04-06,,,\n")
            .sound();
    assertEquals(Set.of("basil", "lettuce", "lettuce/red oak"), book.crops().keySet());
    Crop red = book.crop(book.plantings().get(3)).orElseThrow();
    assertEquals("red-leaf", red.colourModel());
    assertEquals(new HeightModel(2, 0.5, 0.5), red.heightModel());
    assertEquals(OptionalDouble.of(7), red.emergedByDas());
    assertEquals(new Crop.Limits(0.7, 1.5, 0.35), red.limits());
    assertEquals(
        Optional.of(new Harvest(150, 120, 0.9, 28, 38, 0.05, OptionalDouble.of(150))),
        red.harvest());
    // A variety that the book does not describe is grown as its crop.
    assertEquals("green-leaf", book.crop(book.plantings().get(1)).orElseThrow().colourModel());
  }

  @Test
  void badCropStopsOnlyWhatIsPlantedWithIt() {
    BookReading reading = book().change("crops.yaml", "green-leaf", "green-leave").read();
    assertEquals(
        List.of(
            "crops.yaml:3:19: crops.basil.colour_model: the colour model \"green-leave\" is"
                + " unknown; did you mean \"green-leaf\"? known: green-leaf, red-leaf,"
                + " green-leaf-taught, red-leaf-taught"),
        reading.problems().stream().map(Object::toString).toList());
    CropBook book = reading.book();
    assertEquals(Set.of("lettuce"), book.crops().keySet());
    assertEquals(3, book.plantings().size());
    assertEquals(Optional.empty(), book.crop(book.plantings().get(0)));
    assertTrue(book.crop(book.plantings().get(1)).isPresent());
    assertEquals(reading.problems().get(0), book.whyBroken("crop", "basil").orElseThrow());
    assertEquals(Optional.empty(), book.whyBroken("crop", "lettuce"));
  }

  @Test
  void badVarietyStopsOnlyTheVariety() {
    BookReading reading =
        book()
            .with(
                "crops.yaml",
                """
                crops:
                  basil: {colour_model: green-leaf, height_model: {scale_mm: 5, exponent: 0.5}}
                  lettuce:
                    colour_model: green-leaf
                    height_model: {scale_mm: 2, exponent: 0.5}
                    varieties: {oak: {emerged_by_das: x}}
                """)
            .plantings("R3,P1,3,lettuce,oak,strip,,,2026-04-06,,,\n")
            .read();
    assertEquals(
        List.of(
            "crops.yaml:6:39: crops.lettuce.varieties.oak.emerged_by_das: \"x\" is not a number;"
                + " write a number from 0 to 400"),
        reading.problems().stream().map(Object::toString).toList());
    CropBook book = reading.book();
    assertTrue(book.crop(book.plantings().get(1)).isPresent());
    assertEquals(Optional.empty(), book.crop(book.plantings().get(3)));
  }

  @Test
  void everyFaultOfACropIsNamedWithItsPlace() {
    assertEquals(
        List.of(
            "crops.yaml:3:5: crops.basil: the key colour_model is missing; add colour_model: ...",
            "crops.yaml:3:45: crops.basil.height_model.exponent: \"2.5\" is out of range; write a"
                + " number from 0 to 2",
            "crops.yaml:4:29: crops.basil.limits.lagging_share: \"78\" is out of range; write a"
                + " number from 0 to 1",
            "crops.yaml:5:30: crops.basil.harvest.head_weight_g: \"heavy\" is not a number; write a"
                + " number above 0, at most 20000",
            "crops.yaml:5:49: crops.basil.harvest.window_dat: the list has 1 values; write 2"
                + " numbers",
            "crops.yaml:6:5: crops.basil.colour: the key \"colour\" is unknown; did you mean"
                + " \"colour_model\"? known: varieties, colour_model, emerged_by_das,"
                + " growth_curve, ready_to_transplant, grader"),
        book()
            .with(
                "crops.yaml",
                """
                crops:
                  basil:
                    height_model: {scale_mm: 5.2, exponent: 2.5}
                    limits: {lagging_share: 78}
                    harvest: {head_weight_g: heavy, window_dat: [28]}
                    colour: green-leaf
                  lettuce: {colour_model: green-leaf, height_model: {scale_mm: 2, exponent: 0.5}}
                """)
            .problems());
  }

  @Test
  void harvestThatContradictsItselfIsNamed() {
    assertEquals(
        List.of(
            "crops.yaml:5:46: crops.basil.harvest.minimum_g: the minimum is over head_weight_g;"
                + " write less",
            "crops.yaml:5:63: crops.basil.harvest.window_dat: the window ends before it begins;"
                + " swap the two days"),
        book()
            .change(
                "crops.yaml",
                "exponent: 0.5}\n  lettuce",
                "exponent: 0.5}\n    harvest: {head_weight_g: 150, minimum_g: 200, window_dat: [38,"
                    + " 28]}\n  lettuce")
            .problems());
  }
}
