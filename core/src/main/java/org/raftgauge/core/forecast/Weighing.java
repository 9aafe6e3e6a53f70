// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.IdentityHashMap;
import java.util.Optional;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;

/**
 * Tells weights of plants from their curves: of open plants by the open fit; of closed ones by the
 * closed fit where that rests on growth curve or height. An area that a closed site shows stops
 * growing, so a closed fit that rests on it tells nothing of coming days: the open fit then takes
 * the area that the curve gives, and that is said. Where a closed plant's curve was led by weights
 * through the same line, the line's error is in the curve's already and counts no more here.
 */
final class Weighing {
  /** Spread of slopes beyond the weighings, between 1 and 1.5; a working value. */
  private static final double SLOPE_SD = 0.15;

  private final Grader grader;
  private final IdentityHashMap<RegimeFit, RegimeFit> sure = new IdentityHashMap<>();

  /**
   * The linear part of a plant's ln weight on a day.
   *
   * @param fit whose terms
   * @param regime of the fit
   * @param slope of ln weight with ln area
   * @param heightSd by the spread of heights, of ln weight
   * @param offset of ln weight, where the line is held to a slope from 1 to 1.5
   * @param beyondSd by how far a size lies beyond those weighed, of ln weight, shared by all
   * @param remark what a reader must know, in words
   */
  record How(
      RegimeFit fit,
      Regime regime,
      double slope,
      double heightSd,
      double offset,
      double beyondSd,
      Optional<String> remark) {}

  /** How a plant is weighed, with the values of the terms; holds an array, so it is no record. */
  static final class Row {
    final How how;
    final double[] design;

    Row(How how, double[] design) {
      this.how = how;
      this.design = design;
    }
  }

  Weighing(Grader grader) {
    this.grader = grader;
  }

  /**
   * Weighs.
   *
   * @param plant the plant
   * @param day from the evening
   * @return nothing where the grader tells no such plant
   */
  Optional<Row> row(Outlook plant, int day) {
    double lnArea = plant.days().get(day).lnWeighed();
    String variety = plant.planting().variety();
    Optional<RegimeFit> closed = Line.closedFit(grader);
    Optional<RegimeFit> open = grader.fit(Regime.OPEN);
    boolean past = open.map(fit -> isBeyond(line(fit, variety), lnArea)).orElse(true);
    boolean byClosed = closed.isPresent() && (plant.closed() || past);
    Regime regime = byClosed ? Regime.CLOSED : Regime.OPEN;
    return (byClosed ? closed : open).flatMap(fit -> row(line(fit, variety), regime, plant, day));
  }

  private Line line(RegimeFit fit, String variety) {
    return new Line(grader, fit, variety);
  }

  private static boolean isBeyond(Line line, double lnArea) {
    return line.fit().numbers().validity().beyond(line.traits(lnArea)).isPresent();
  }

  private Optional<Row> row(Line line, Regime regime, Outlook plant, int day) {
    double lnArea = plant.days().get(day).lnWeighed();
    boolean led = plant.ledByWeights();
    return line.at(lnArea)
        .map(
            point ->
                new Row(
                    new How(
                        led ? sure.computeIfAbsent(line.fit(), Weighing::sure) : line.fit(),
                        regime,
                        point.slope,
                        line.heightSd(lnArea),
                        point.offset,
                        led ? 0 : SLOPE_SD * Math.abs(point.beyond),
                        remark(line, regime, plant, lnArea)),
                    point.design));
  }

  /** Returns a fit without error of its numbers. */
  private static RegimeFit sure(RegimeFit fit) {
    int p = fit.coefficients().length;
    return new RegimeFit(fit.numbers(), fit.coefficients(), new double[p][p]);
  }

  private static Optional<String> remark(Line line, Regime regime, Outlook plant, double lnArea) {
    if (!plant.ledByWeights() && isBeyond(line, lnArea)) {
      return Optional.of("beyond the grader's weighings");
    }
    return plant.closed() && regime == Regime.OPEN
        ? Optional.of("are closed, weighed by the open fit at their curve's area; fit a closed one")
        : Optional.empty();
  }
}
