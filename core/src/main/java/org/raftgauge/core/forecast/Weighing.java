// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.HeightFit;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Traits;
import org.raftgauge.core.grader.Validity;

/**
 * Tells weights of plants from their curves: of open plants by the open fit; of closed ones by the
 * closed fit where that rests on growth curve or height. An area that a closed site shows stops
 * growing, so a closed fit that rests on it tells nothing of coming days: the open fit then takes
 * the area that the curve gives, and that is said.
 */
final class Weighing {
  private static final double STEP = 0.01;

  /** Slope of ln weight with ln area where leaves lie flat, as much of them on each cm2. */
  private static final double FLAT = 1;

  /** Slope where plants grow alike in all directions: mass with length cubed, area squared. */
  private static final double ISOMETRY = 1.5;

  /** Spread of slopes between the two; a working value. */
  private static final double SLOPE_SD = 0.15;

  private final Grader grader;

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
    double lnArea = plant.days().get(day).lnArea();
    Traits traits = traits(plant, lnArea);
    Optional<RegimeFit> closed = grader.fit(Regime.CLOSED).filter(Weighing::restsOnGrowth);
    Optional<RegimeFit> open = grader.fit(Regime.OPEN);
    boolean past =
        open.map(fit -> fit.numbers().validity().beyond(traits).isPresent()).orElse(true);
    boolean byClosed = closed.isPresent() && (plant.closed() || past);
    Optional<RegimeFit> fit = byClosed ? closed : open;
    return fit.flatMap(f -> row(f, byClosed ? Regime.CLOSED : Regime.OPEN, plant, lnArea));
  }

  private Optional<Row> row(RegimeFit fit, Regime regime, Outlook plant, double lnArea) {
    // Beyond the weighings the line goes on straight, for squares would run away.
    double within = within(fit, lnArea);
    Traits traits = traits(plant, within);
    Optional<double[]> design = fit.design(traits);
    Optional<double[]> larger = fit.design(traits(plant, within + STEP));
    if (design.isEmpty() || larger.isEmpty()) {
      return Optional.empty();
    }
    double[] c = fit.coefficients();
    double slope = (dot(larger.get(), c) - dot(design.get(), c)) / STEP;
    double beyond = lnArea - within;
    double[] straight = design.get().clone();
    for (int i = 0; i < straight.length; i++) {
      straight[i] += beyond * (larger.get()[i] - design.get()[i]) / STEP;
    }
    double held = Math.max(FLAT, Math.min(ISOMETRY, slope));
    double offset = beyond == 0 ? 0 : (held - slope) * beyond;
    How how =
        new How(
            fit,
            regime,
            beyond == 0 ? slope : held,
            heightSd(fit, traits),
            offset,
            SLOPE_SD * Math.abs(beyond),
            remark(fit, regime, plant, traits(plant, lnArea)));
    return Optional.of(new Row(how, straight));
  }

  /** Returns ln area, or the end of the range that was weighed where it lies beyond. */
  private static double within(RegimeFit fit, double lnArea) {
    double value = lnArea;
    for (Size size : new Size[] {Size.AREA, Size.CURVE}) {
      Validity.Range range = fit.numbers().validity().ranges().get(size);
      if (range != null) {
        value = Math.max(Math.log(range.from()), Math.min(Math.log(range.to()), value));
      }
    }
    return value;
  }

  private static Optional<String> remark(
      RegimeFit fit, Regime regime, Outlook plant, Traits traits) {
    if (fit.numbers().validity().beyond(traits).isPresent()) {
      return Optional.of("beyond the grader's weighings");
    }
    return plant.closed() && regime == Regime.OPEN
        ? Optional.of("are closed, weighed by the open fit at their curve's area; fit a closed one")
        : Optional.empty();
  }

  private double heightSd(RegimeFit fit, Traits traits) {
    Optional<HeightFit> heights = grader.height();
    if (heights.isEmpty() || !uses(fit, Size.HEIGHT)) {
      return 0;
    }
    Traits taller =
        new Traits(
            traits.variety(),
            traits.areaCm2(),
            OptionalDouble.of(traits.topHeightMm().orElseThrow() * Math.exp(STEP)),
            traits.curveAreaCm2());
    double[] c = fit.coefficients();
    double rise =
        dot(fit.design(taller).orElseThrow(), c) - dot(fit.design(traits).orElseThrow(), c);
    return Math.abs(rise / STEP) * heights.get().sdLn();
  }

  private Traits traits(Outlook plant, double lnArea) {
    OptionalDouble area = OptionalDouble.of(Math.exp(lnArea));
    OptionalDouble height =
        grader
            .height()
            .map(h -> OptionalDouble.of(h.topScaleMm() * Math.exp(h.exponent() * lnArea)))
            .orElse(OptionalDouble.empty());
    return new Traits(plant.planting().variety(), area, height, area);
  }

  private static boolean restsOnGrowth(RegimeFit fit) {
    return !uses(fit, Size.AREA) && (uses(fit, Size.CURVE) || uses(fit, Size.HEIGHT));
  }

  private static boolean uses(RegimeFit fit, Size size) {
    return fit.numbers().terms().stream().anyMatch(t -> t.sizes().contains(size));
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
