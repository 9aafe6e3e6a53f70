// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Weighings from which no grader is made, and one that is of no use. */
class RefusedWeighingsTest {
  private static final String NO_CLOSED =
      "; 0 weighings of closed sites; at least 8 are needed before closed sites can be weighed";

  /** Ten plants of 50, 100 .. 500 cm2. */
  private static List<Weighed> plants(String variety, ToDoubleFunction<Double> gOfArea) {
    List<Weighed> plants = new ArrayList<>();
    for (int i = 1; i <= 10; i++) {
      double area = 50 * i;
      plants.add(
          Plants.plant(
              i + 1, Traits.ofArea(variety, area), Regime.OPEN, gOfArea.applyAsDouble(area)));
    }
    return plants;
  }

  private static GraderResult fit(List<Weighed> plants) {
    return FitGrader.fit("basil", plants, FitRule.defaults(), Plants.ORIGIN);
  }

  @Test
  void weightsThatAreAllAlikeAreRefused() {
    assertEquals(
        new GraderResult.NotFitted(
            "the 10 weighings of open sites all say 50.0 g, which tells nothing of how weight goes"
                + " with size; mend fresh_weight_g in weighings.csv, or weigh plants over the whole"
                + " range of sizes (see grader picks)"
                + NO_CLOSED),
        fit(plants("", area -> 50)));
  }

  @Test
  void weightsThatFallAsPlantsGrowAreRefused() {
    assertEquals(
        new GraderResult.NotFitted(
            "the weights of open sites fall as area_cm2 grows from 50 to 500, but heavier plants"
                + " must not be smaller; look in weighings.csv for rows, columns or units mixed up"
                + " (weights are in grams), and weigh plants over the whole range of sizes (see"
                + " grader picks)"
                + NO_CLOSED),
        fit(plants("", area -> 5000 / area)));
  }

  @Test
  void varietyWhoseWeightsFallIsNamed() {
    List<Weighed> plants = new ArrayList<>(plants("Halm", area -> area));
    plants.addAll(plants("Marle", area -> 5000 / area));
    String reason = ((GraderResult.NotFitted) fit(plants)).reason();
    assertTrue(
        reason.startsWith("the weights of open sites of variety \"Marle\" fall as area_cm2"),
        reason);
  }

  @Test
  void regimeThatFallsIsRefusedAlone() {
    List<Weighed> plants = new ArrayList<>(plants("", area -> 5000 / area));
    plants.addAll(Plants.closed(20, 0.05, 3));
    Grader grader = (Grader) fit(plants);
    assertFalse(grader.fit(Regime.OPEN).isPresent());
    assertTrue(grader.refused().get(Regime.OPEN).startsWith("the weights of open sites fall"));
    assertTrue(grader.fit(Regime.CLOSED).isPresent());
  }

  @Test
  void graderThatMissesByMoreThanHalfIsSaidToBeOfNoUse() {
    // Every other plant in ounces of 28.35 g, as a scale that was switched to them shows it.
    List<Weighed> mixed = plants("", area -> area % 100 == 0 ? area / 28.35 : area);
    Grader grader = (Grader) fit(mixed);
    LeftOut leftOut = grader.fit(Regime.OPEN).orElseThrow().numbers().leftOut();
    assertTrue(leftOut.tellsNothing(), leftOut.toString());
    String remark = grader.remarks().get(0);
    assertEquals(
        String.format(
            Locale.ROOT,
            "open: a grader that misses a plant by %.0f %% on average is of no use; look in"
                + " weighings.csv whether every fresh_weight_g is in grams, and of the plant that"
                + " raft and site name",
            100 * leftOut.meanShare()),
        remark);
    assertFalse(new LeftOut(0.5, 0.4, 0.5).tellsNothing(), "half is the bound");
    assertTrue(
        ((Grader) fit(plants("", area -> area / 28.35)))
            .remarks().stream().noneMatch(r -> r.contains("of no use")),
        "all in ounces cannot be told from light plants");
  }
}
