// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.HarvestTotal;
import org.raftgauge.core.grader.Regime;

/**
 * What the scale said of an open raft's heads at harvest, beside what the evening before would have
 * told.
 *
 * @param harvest the weighed raft
 * @param cohort day on which its plants were set out: rafts of one day err alike
 * @param lnOff ln of the mean head as weighed, less that as told
 * @param row by how much the told ln mean moves with each coefficient of the open fit
 * @param sharedSd of ln weight, what growth and photos may be off by for the whole cohort
 * @param ownSd of ln weight, what is the raft's own: its single plants and its tally
 */
record HarvestLesson(
    HarvestTotal harvest,
    LocalDate cohort,
    double lnOff,
    List<Double> row,
    double sharedSd,
    double ownSd) {
  /** What photos of one evening may be off by in common, of ln area; a working value. */
  private static final double PHOTO_SD = 0.02;

  HarvestLesson {
    row = List.copyOf(row);
  }

  /**
   * Compares.
   *
   * @param harvest what the scale said
   * @param plants of the raft, as the evening before carries them
   * @param weighing tells their weights
   * @param day of the harvest, from that evening
   * @return nothing where not every plant is open and can be told, or only a part was harvested
   */
  static Optional<HarvestLesson> of(
      HarvestTotal harvest, List<Outlook> plants, Weighing weighing, int day) {
    boolean whole = !plants.isEmpty() && harvest.heads() >= HeadWeights.WHOLE_SHARE * plants.size();
    if (!whole || harvest.totalWeightG() <= 0) {
      return Optional.empty();
    }
    double grams = 0;
    double slope = 0;
    double ownVariance = 0;
    double[] row = new double[0];
    for (Outlook plant : plants) {
      Optional<Weighing.Row> told =
          weighing.row(plant, day).filter(r -> r.how.regime() == Regime.OPEN && !plant.closed());
      if (told.isEmpty()) {
        return Optional.empty();
      }
      Weighing.How how = told.get().how;
      double[] design = told.get().design;
      double ownSd = Math.hypot(how.slope() * plant.days().get(day).ownSd(), how.heightSd());
      double residual = how.fit().numbers().residualSd();
      double mean =
          how.fit().numbers().smearing()
              * Math.exp(
                  Line.dot(design, how.fit().coefficients()) + how.offset() + ownSd * ownSd / 2);
      row = Arrays.copyOf(row, design.length);
      for (int i = 0; i < row.length; i++) {
        row[i] += mean * design[i];
      }
      grams += mean;
      slope += mean * how.slope();
      ownVariance += mean * mean * Math.expm1(ownSd * ownSd + residual * residual);
    }
    double total = grams;
    CohortGrowth growth = plants.get(0).growth();
    return Optional.of(
        new HarvestLesson(
            harvest,
            growth.since(),
            Math.log(harvest.totalWeightG() / harvest.heads()) - Math.log(grams / plants.size()),
            Arrays.stream(row).map(v -> v / total).boxed().toList(),
            slope / grams * Math.hypot(growth.sharedSd(day), PHOTO_SD),
            Math.hypot(Math.sqrt(ownVariance) / grams, HeadWeights.TALLY_SD)));
  }
}
