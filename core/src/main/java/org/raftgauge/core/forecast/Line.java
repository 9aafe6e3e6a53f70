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
 * The ln weight of a variety's plants along their ln area, by one regime's fit: within the
 * weighings as fitted, beyond them straight on, for squares would run away.
 */
final class Line {
  private static final double STEP = 0.01;

  /** Slope of ln weight with ln area where leaves lie flat, as much of them on each cm2. */
  private static final double FLAT = 1;

  /** Slope where plants grow alike in all directions: mass with length cubed, area squared. */
  private static final double ISOMETRY = 1.5;

  private static final double SMALLEST = Math.log(0.01);
  private static final double LARGEST = Math.log(1e6);
  private static final int HALVINGS = 60;

  private final Grader grader;
  private final RegimeFit fit;
  private final String variety;

  /** A place on the line; holds an array, so it is no record. */
  static final class Point {
    /** Values of the fit's terms. */
    final double[] design;

    /** Of ln weight with ln area. */
    final double slope;

    /** Of ln weight, where the line beyond the weighings is held to a slope from 1 to 1.5. */
    final double offset;

    /** By how much ln area lies beyond the weighings. */
    final double beyond;

    final double lnWeight;

    private Point(double[] design, double slope, double offset, double beyond, double lnWeight) {
      this.design = design;
      this.slope = slope;
      this.offset = offset;
      this.beyond = beyond;
      this.lnWeight = lnWeight;
    }
  }

  Line(Grader grader, RegimeFit fit, String variety) {
    this.grader = grader;
    this.fit = fit;
    this.variety = variety;
  }

  /**
   * Returns the line that plants are weighed by once closed: the closed fit where it rests on what
   * grows on after closure, else the open one at the area their curve gives.
   *
   * @param grader of their crop
   * @param variety theirs
   */
  static Optional<Line> closed(Grader grader, String variety) {
    return closedFit(grader)
        .or(() -> grader.fit(Regime.OPEN))
        .map(fit -> new Line(grader, fit, variety));
  }

  /** Returns the closed fit where it rests on what grows on after closure. */
  static Optional<RegimeFit> closedFit(Grader grader) {
    return grader.fit(Regime.CLOSED).filter(Line::restsOnGrowth);
  }

  /**
   * Finds the place of a size.
   *
   * @param lnArea of cm2
   * @return nothing where the fit tells no such plant
   */
  Optional<Point> at(double lnArea) {
    double within = within(lnArea);
    Optional<double[]> design = fit.design(traits(within));
    Optional<double[]> larger = fit.design(traits(within + STEP));
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
    return Optional.of(
        new Point(straight, beyond == 0 ? slope : held, offset, beyond, dot(straight, c) + offset));
  }

  /**
   * Finds the size that has a weight.
   *
   * @param lnWeight of g
   * @return ln area; nothing where the fit tells no such plant or weight does not rise with size
   */
  OptionalDouble lnAreaOf(double lnWeight) {
    double low = SMALLEST;
    double high = LARGEST;
    Optional<Point> least = at(low);
    Optional<Point> most = at(high);
    if (least.isEmpty()
        || most.isEmpty()
        || lnWeight < least.get().lnWeight
        || lnWeight > most.get().lnWeight) {
      return OptionalDouble.empty();
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      boolean under = at(middle).orElseThrow().lnWeight < lnWeight;
      low = under ? middle : low;
      high = under ? high : middle;
    }
    return OptionalDouble.of((low + high) / 2);
  }

  /** Returns how its plants were weighed: a word of {@code weighings.csv}. */
  String state() {
    return grader.origin().state();
  }

  /** Returns the fit. */
  RegimeFit fit() {
    return fit;
  }

  /** Returns the traits of a plant of the variety that has a size. */
  Traits traits(double lnArea) {
    OptionalDouble area = OptionalDouble.of(Math.exp(lnArea));
    OptionalDouble height =
        grader
            .height()
            .map(h -> OptionalDouble.of(h.topScaleMm() * Math.exp(h.exponent() * lnArea)))
            .orElse(OptionalDouble.empty());
    return new Traits(variety, area, height, area);
  }

  /** Returns how much the spread of heights moves ln weight at a size. */
  double heightSd(double lnArea) {
    Optional<HeightFit> heights = grader.height();
    if (heights.isEmpty() || !uses(fit, Size.HEIGHT)) {
      return 0;
    }
    Traits traits = traits(within(lnArea));
    Traits taller =
        new Traits(
            variety,
            traits.areaCm2(),
            OptionalDouble.of(traits.topHeightMm().orElseThrow() * Math.exp(STEP)),
            traits.curveAreaCm2());
    double[] c = fit.coefficients();
    double rise =
        dot(fit.design(taller).orElseThrow(), c) - dot(fit.design(traits).orElseThrow(), c);
    return Math.abs(rise / STEP) * heights.get().sdLn();
  }

  /** Returns ln area, or the end of the range that was weighed where it lies beyond. */
  private double within(double lnArea) {
    double value = lnArea;
    for (Size size : new Size[] {Size.AREA, Size.CURVE}) {
      Validity.Range range = fit.numbers().validity().ranges().get(size);
      if (range != null) {
        value = Math.max(Math.log(range.from()), Math.min(Math.log(range.to()), value));
      }
    }
    return value;
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
