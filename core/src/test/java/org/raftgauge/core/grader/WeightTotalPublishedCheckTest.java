// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Holds smearing, intervals and totals to a worked example of twelve plants. */
@Tag("published")
class WeightTotalPublishedCheckTest {
  // Twelve invented plants of the reference sheet, cm2 and g; its results were worked with R 4.2.2.
  private static final double[] AREA_CM2 = {
    45.2, 60.1, 78.4, 95.3, 120.7, 150.2, 181, 220.4, 262.9, 310.5, 352.8, 400.1
  };
  private static final double[] WEIGHT_G = {
    7.1, 10.9, 14.2, 19.8, 25.1, 36.4, 41, 58.9, 66.5, 90.2, 97.8, 129.6
  };
  private static final double[] TO_ADD_CM2 = {
    180, 200, 215, 230, 240, 250, 255, 262, 270, 281, 295, 310
  };

  private static RegimeFit fit() {
    List<Weighed> plants = new ArrayList<>();
    for (int i = 0; i < AREA_CM2.length; i++) {
      plants.add(Plants.plant(i + 2, Traits.ofArea("", AREA_CM2[i]), Regime.OPEN, WEIGHT_G[i]));
    }
    return FitRegime.fit(plants, List.of(Term.of(), Term.of(Size.AREA)), Estimator.LEAST_SQUARES);
  }

  @Test
  void smearingIsDuans() {
    near(1.001129938, fit().numbers().smearing(), 1e-9);
    assertEquals(10, fit().numbers().degreesOfFreedom());
  }

  @Test
  void predictionAndItsIntervalAgree() {
    Prediction told = fit().predict(Traits.ofArea("", 250)).orElseThrow();

    near(4.1947376698, told.lnMedian(), 1e-10);
    near(66.33632727, told.medianG(), 1e-9);
    near(66.41128318, told.meanG(), 1e-9);
    near(0.0184584, told.calibrationSd(), 1e-5);
    near(0.05527772, told.sdLn(), 1e-7);
    near(58.649041, told.quantileG(0.025), 1e-7);
    near(75.031206, told.quantileG(0.975), 1e-7);
  }

  @Test
  void totalOfTwelvePlantsCarriesTheSharedErrorInFull() {
    RegimeFit fit = fit();
    List<double[]> rows =
        DoubleStream.of(TO_ADD_CM2)
            .mapToObj(area -> fit.design(Traits.ofArea("", area)).orElseThrow())
            .toList();
    double s = fit.numbers().residualSd();
    WeightTotal total = WeightTotal.of(fit, rows, Math.exp(s * s / 2));

    // Lognormal mean with parameter variance, and SD with the shared error; 12.2 g without it.
    near(796.4872206, total.meanG(), 1e-9);
    near(19.21391879, total.sdG(), 1e-8);
    double alone = Math.sqrt(total.sdG() * total.sdG() - total.sharedSdG() * total.sharedSdG());
    near(12.19969806, alone, 0.002);
    assertTrue(total.sharedSdG() > 14);
  }

  @Test
  void intervalOfAManyPlantTotalDoesNotShrinkBelowTheCalibration() {
    RegimeFit fit = fit();
    double[] row = fit.design(Traits.ofArea("", 250)).orElseThrow();
    WeightTotal few = WeightTotal.of(fit, java.util.Collections.nCopies(10, row));
    WeightTotal many = WeightTotal.of(fit, java.util.Collections.nCopies(1000, row));

    double fewShare = few.sdG() / few.meanG();
    double manyShare = many.sdG() / many.meanG();
    // The standard error of ln w at 250 cm2, 0.0185, is what remains however many are added.
    assertTrue(manyShare < fewShare);
    assertEquals(0.0185, manyShare, 0.0005);
    assertTrue(many.quantileG(0.1) < many.meanG() && many.meanG() < many.quantileG(0.9));
  }

  @Test
  void totalOfNoPlantsIsNothing() {
    WeightTotal none = WeightTotal.of(fit(), List.of());
    assertEquals(0, none.meanG());
    assertEquals(0, none.quantileG(0.9));
  }

  private static void near(double expected, double found, double relative) {
    assertEquals(expected, found, Math.abs(expected) * relative);
  }
}
