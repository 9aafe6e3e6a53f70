// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A way in which the growth rate of healthy plants changes with age, relative to that at one age.
 *
 * <p>Without past cycles or a curve in the book it is that of a Gompertz curve, which loses its
 * rate constant, 0 to 0.2 of itself, in a day, or that of a logistic curve, which falls ever faster
 * once the plants have most of their final size. Which of them, the evenings before tell as far as
 * they can; and growers harvest before growth is over, so that young plants are far from it.
 * Constants and weights are working values that cover leafy crops.
 */
interface Ageing {
  /** Share of the rate that is lost in a day. */
  List<Double> DECLINES = List.of(0.0, 0.04, 0.08, 0.13, 0.2);

  /** Rate constants of logistic curves, 1/day. */
  List<Double> PACES = List.of(0.2, 0.3);

  /** Shares of their final size that plants may have when they are first harvested. */
  List<Double> GROWN = List.of(0.4, 0.65, 0.85);

  /** Share of a rate that is mostly left when plants are first harvested: they still grow then. */
  double LEFT_AT_HARVEST = 0.15;

  /** How often less is left, beside the others. */
  double SELDOM = 0.3;

  /** How often a decline of {@link #DECLINES}, or a logistic curve, is met. */
  double DECLINE_WEIGHT = 0.12;

  double LOGISTIC_WEIGHT = 0.4 / 6;

  /** How much the book's curve counts beside all other ways together: our own choice. */
  double BOOK_WEIGHT = 1;

  /** How much past cycles count, which have shown how their kind ages: our own choice. */
  double CYCLES_WEIGHT = 50;

  /** Least rate of a yardstick that others can be told against, 1/day. */
  double LEAST_RATE = 0.01;

  /** Returns the rate at an age over that at the origin; nothing where it is not known. */
  OptionalDouble rateShare(double age);

  /**
   * A way with its weight.
   *
   * @param way the way
   * @param weight before anything was seen, more than 0
   */
  record Weighted(Ageing way, double weight) {}

  /**
   * Returns the ways that are thought possible.
   *
   * @param origin age at which the rate share is 1, days
   * @param yardstick past cycles or the book's curve, where there are any
   * @param harvest age at which such plants are first harvested, days; where it is not known, they
   *     may be at the origin
   */
  static List<Weighted> ways(double origin, Optional<Yardstick> yardstick, OptionalDouble harvest) {
    List<Weighted> ways = new ArrayList<>();
    for (double perDay : DECLINES) {
      Ageing way = age -> OptionalDouble.of(Math.exp(-perDay * (age - origin)));
      double then = Math.exp(-perDay * (harvest.orElse(origin) - origin));
      double odd = then < LEFT_AT_HARVEST ? SELDOM : 1;
      ways.add(new Weighted(way, odd * DECLINE_WEIGHT));
    }
    for (double pace : PACES) {
      for (double then : GROWN) {
        double odds = then / (1 - then) * Math.exp(pace * (origin - harvest.orElse(origin)));
        double grown = odds / (1 + odds);
        Ageing way =
            age -> OptionalDouble.of(1 / (1 - grown + grown * Math.exp(pace * (age - origin))));
        ways.add(new Weighted(way, LOGISTIC_WEIGHT));
      }
    }
    yardstick
        .flatMap(y -> y.rate(origin).filter(r -> r > LEAST_RATE).map(r -> like(y, r)))
        .ifPresent(way -> ways.add(new Weighted(way, weight(yardstick.get()))));
    return ways;
  }

  private static double weight(Yardstick yardstick) {
    return yardstick.basis().onCycles() ? CYCLES_WEIGHT : BOOK_WEIGHT;
  }

  private static Ageing like(Yardstick yardstick, double rateAtOrigin) {
    return age ->
        yardstick
            .rate(age)
            .map(r -> OptionalDouble.of(Math.max(0, r) / rateAtOrigin))
            .orElse(OptionalDouble.empty());
  }
}
