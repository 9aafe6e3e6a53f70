// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;

class TaughtRuleTest {
  private static final List<Double> LEAST = List.of(-1.0, -1.0, -4.0);
  private static final List<Double> MOST = List.of(1.0, 1.0, 0.0);

  /** Weights that are 0 but for one term. */
  private static List<Double> weights(int term, double value) {
    List<Double> weights = new ArrayList<>(Collections.nCopies(20, 0.0));
    weights.set(term, value);
    return weights;
  }

  private static TaughtColour model(Map<Tissue, List<Double>> weights) {
    return new TaughtColour("x", LEAST, MOST, weights, Optional.empty());
  }

  @Test
  void termsAreAllProductsOfUpToThreeCoordinates() {
    // At z = (2, 3, 5) / 10 the sum of all monomials of degree 0 to 3, by hand from
    // h1 = 1.0, h2 = .04 + .09 + .25 + .06 + .10 + .15 = 0.69,
    // h3 = .008 + .027 + .125 + .012 + .020 + .018 + .050 + .045 + .075 + .030 = 0.41.
    double[] terms = new double[20];
    new ColourTerms(LEAST, MOST).write(new double[] {0.2, 0.3, -1}, terms);
    double sum = 0;
    for (double t : terms) {
      sum += t;
    }
    assertEquals(1 + 1.0 + 0.69 + 0.41, sum, 1e-12);
    assertEquals(1, terms[0]);
  }

  @Test
  void beyondWhatWasTaughtTheRimHolds() {
    double[] rim = new double[20];
    double[] beyond = new double[20];
    ColourTerms terms = new ColourTerms(LEAST, MOST);
    terms.write(new double[] {1, -1, 0}, rim);
    terms.write(new double[] {7, -3, 2}, beyond);
    for (int i = 0; i < 20; i++) {
      assertEquals(rim[i], beyond[i]);
    }
    assertThrows(IllegalArgumentException.class, () -> new ColourTerms(MOST, LEAST));
  }

  @Test
  void coordinatesAreLogsOfRatiosWithAFloor() {
    // ln(0.312 / 0.112), ln(0.312 / 0.062), ln 0.312, the floor being 0.012.
    double[] c = ColourTerms.coordinates(new float[] {0.1f, 0.3f, 0.05f});
    assertEquals(Math.log(0.312 / 0.112), c[0], 1e-6);
    assertEquals(Math.log(0.312 / 0.062), c[1], 1e-6);
    assertEquals(Math.log(0.312), c[2], 1e-6);
    assertEquals(0, ColourTerms.coordinates(new float[] {-1, -1, -1})[0], 1e-12);
  }

  @Test
  void probabilitiesAreTheSoftmaxOfTheWeights() {
    // Constants ln 6, ln 3, 0: shares 6, 3, 1 of 10; leaf is green and dead.
    TaughtRule rule =
        new TaughtRule(
            model(
                Map.of(
                    Tissue.GREEN, weights(0, Math.log(6)),
                    Tissue.DEAD, weights(0, Math.log(3)),
                    Tissue.BOARD, weights(0, 0))));
    assertEquals(0.9, rule.leaf(new double[3]), 1e-12);
    assertEquals(Tissue.GREEN, rule.likeliest(new double[3]));
    // Sure leaf scores 1.5, so that half of it is the least threshold of 0.75.
    assertEquals(1.35, rule.score(0.2, 0.3, 0.1), 1e-12);
    assertEquals(0.9f, TaughtRule.leafOfScore(1.35f), 1e-6f);
  }

  @Test
  void theCompiledTableSaysWhatTheRuleSays() {
    TaughtColour model = model(Map.of(Tissue.GREEN, weights(1, 4), Tissue.BOARD, weights(0, 1)));
    TaughtRule rule = new TaughtRule(model);
    ColourTable table = LeafModel.taught(model).table();
    Random random = new Random(2);
    for (int i = 0; i < 2000; i++) {
      float r = random.nextFloat();
      float g = random.nextFloat();
      float b = random.nextFloat();
      double exact = rule.score(r, g, b);
      // A step of the table is up to 1/63 of the root: 3 % of light at half scale, more when dark.
      double bound = Math.min(r, g) > 0.05 ? 0.2 : 0.5;
      assertEquals(exact, table.score(r, g, b), bound, r + " " + g + " " + b);
    }
  }

  @Test
  void builtInModelsAreFoundByNameAndTaughtOnesKnowTheGroundTheyWereTaught() {
    assertEquals(LeafModel.GREEN_LEAF, LeafModel.named("green-leaf").orElseThrow());
    assertEquals(LeafModel.RED_LEAF, LeafModel.named("red-leaf").orElseThrow());
    assertTrue(LeafModel.named("my-leaf").isEmpty());
    assertTrue(LeafModel.GREEN_LEAF.knowsOpenGround());
    assertFalse(LeafModel.RED_LEAF.knowsOpenGround());
    TaughtColour board = model(Map.of(Tissue.RED, weights(0, 1), Tissue.BOARD, weights(0, 0)));
    assertFalse(LeafModel.taught(board).knowsOpenGround());
    TaughtColour ground =
        new TaughtColour(
            "y", LEAST, MOST, board.weights(), Optional.of(GroundNetworkTest.oneUnit(0, 0, 1)));
    assertTrue(LeafModel.taught(ground).knowsOpenGround());
    assertEquals("y", LeafModel.taught(ground).bookName());
  }
}
