// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

class FitPoseTest {
  private static final Layout DECK = TestLayouts.deck18();
  private static final Lens LENS = TestPoses.lens(1200, 2000);

  @Test
  void exactTiesGiveTheExactPoseAtAnyRotation() {
    for (int degrees = 0; degrees < 360; degrees += 30) {
      CameraPose truth = TestPoses.over(LENS, DECK.board(), 1600, degrees, 5, -4);
      List<Tie> ties = ties(truth, List.of(0, 1, 2, 3), 1e-3, new Random(1), 0);
      CameraPose found = fit(ties).pose();
      // The priors (2 % of height, 3 degrees) pull by a millionth of that against 1e-3 px.
      assertTrue(TestPoses.worstMm(truth, found, DECK.board()) < 1e-3, degrees + " degrees");
      assertEquals(truth.heightMm(), found.heightMm(), 0.01);
    }
  }

  @Test
  void standardisedErrorsSpreadNearOne() {
    // Two, three and four markers with normal errors of the stated size, heights and tilts drawn
    // from the priors: error over foretold error must be 1 in the root mean square.
    for (List<Integer> ids : List.of(List.of(0, 1), List.of(0, 2), List.of(0, 1, 2, 3))) {
      Random random = new Random(42);
      double sum = 0;
      int n = 150;
      for (int i = 0; i < n; i++) {
        CameraPose truth = drawn(random);
        PoseFit fit = fit(ties(truth, ids, 0.2, random, 0.2));
        double error = TestPoses.rmsMm(truth, fit.pose(), DECK.board());
        sum += Math.pow(error / fit.errorMm(DECK.board()), 2) / n;
      }
      // 150 draws of a few numbers each: 1 within about 15 %; Huber's weights lose a little.
      assertEquals(1, Math.sqrt(sum), 0.17, ids.toString());
    }
  }

  @Test
  void errorsLargerThanStatedWidenTheForetoldError() {
    Random random = new Random(5);
    CameraPose truth = drawn(random);
    double good = fit(ties(truth, List.of(0, 1, 2, 3), 0.2, random, 0.2)).errorMm(DECK.board());
    double bad = fit(ties(truth, List.of(0, 1, 2, 3), 0.2, random, 1.0)).errorMm(DECK.board());
    // Five times the error gives nearly five times the foretold one (the stated error weighs too).
    assertTrue(bad > 3 * good && bad < 6 * good, good + " " + bad);
  }

  @Test
  void oneWildTieHardlyMovesThePose() {
    Random random = new Random(6);
    CameraPose truth = drawn(random);
    List<Tie> ties = new ArrayList<>(ties(truth, List.of(0, 1, 2, 3), 0.2, random, 0.2));
    Tie wild = ties.get(5);
    ties.set(5, new Tie(wild.deck(), TestPoses.moved(wild.photo(), 25, -10), 0.2));
    // Huber's weights leave a pull of 1.3 of its standard errors.
    assertTrue(TestPoses.worstMm(truth, fit(ties).pose(), DECK.board()) < 0.6);
  }

  private static CameraPose drawn(Random random) {
    return TestPoses.over(
        LENS,
        DECK.board(),
        1600 * (1 + 0.02 * random.nextGaussian()),
        360 * random.nextDouble(),
        3 * random.nextGaussian(),
        3 * random.nextGaussian());
  }

  private static PoseFit fit(List<Tie> ties) {
    return FitPose.fit(
        FromAbove.of(LENS, ties),
        ties.stream().map(FitPose::pull).toList(),
        FitPose.Prior.of(LENS, 1600));
  }

  private static List<Tie> ties(
      CameraPose truth, List<Integer> ids, double statedPx, Random random, double... errorPx) {
    List<Tie> ties = new ArrayList<>();
    for (int id : ids) {
      for (PointMm p : BoardPlaces.marker(DECK.markers().orElseThrow(), id)) {
        PointPx seen = truth.toPhoto(p);
        ties.add(
            new Tie(
                p,
                TestPoses.moved(
                    seen, errorPx[0] * random.nextGaussian(), errorPx[0] * random.nextGaussian()),
                statedPx));
      }
    }
    return ties;
  }
}
