// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** Says why the weighings of a regime are not to be fitted, in words, with the remedy. */
final class WhyRefused {
  private static final String WHOLE_RANGE =
      "weigh plants over the whole range of sizes (see grader picks)";

  private WhyRefused() {}

  /** Says what is wrong with weighings before they are fitted, or nothing. */
  static Optional<String> unfit(List<Weighed> weighed, Regime regime, int fewest) {
    if (weighed.size() < fewest) {
      return Optional.of(
          count(weighed, regime)
              + "; at least "
              + fewest
              + " are needed before "
              + regime
              + " sites can be weighed");
    }
    double g = weighed.get(0).freshWeightG();
    return weighed.stream().allMatch(w -> w.freshWeightG() == g)
        ? Optional.of(
            String.format(
                Locale.ROOT,
                "the %s all say %.1f g, which tells nothing of how weight goes with size; mend"
                    + " fresh_weight_g in weighings.csv, or %s",
                count(weighed, regime),
                g,
                WHOLE_RANGE))
        : Optional.empty();
  }

  /** Says that no model could be fitted for want of sizes. */
  static String lacking(List<Weighed> weighed, Regime regime, Set<Size> missing) {
    return "the "
        + count(weighed, regime)
        + " lack "
        + missing.stream().map(Size::column).sorted().collect(Collectors.joining(" or "))
        + ", which their weight is told from; measure it at every weighing";
  }

  /** Says that a fit makes the largest plants lighter than the smallest, or nothing. */
  static Optional<String> falling(RegimeFit fit, Regime regime) {
    Validity validity = fit.numbers().validity();
    return validity.varieties().stream()
        .filter(
            variety ->
                medianG(fit, variety, Validity.Range::to)
                    < medianG(fit, variety, Validity.Range::from))
        .findFirst()
        .map(
            variety ->
                "the weights of "
                    + regime
                    + " sites"
                    + (variety.isEmpty() ? "" : " of variety \"" + variety + "\"")
                    + " fall as "
                    + validity.ranges().entrySet().stream()
                        .map(WhyRefused::grows)
                        .collect(Collectors.joining(" and "))
                    + ", but heavier plants must not be smaller; look in weighings.csv for rows,"
                    + " columns or units mixed up (weights are in grams), and "
                    + WHOLE_RANGE);
  }

  private static String count(List<Weighed> weighed, Regime regime) {
    return weighed.size() + " weighings of " + regime + " sites";
  }

  private static String grows(Map.Entry<Size, Validity.Range> size) {
    return String.format(
        Locale.ROOT,
        "%s grows from %.0f to %.0f",
        size.getKey().column(),
        size.getValue().from(),
        size.getValue().to());
  }

  private static double medianG(
      RegimeFit fit, String variety, ToDoubleFunction<Validity.Range> end) {
    Map<Size, Validity.Range> ranges = fit.numbers().validity().ranges();
    Traits plant =
        new Traits(
            variety,
            at(ranges, Size.AREA, end),
            at(ranges, Size.HEIGHT, end),
            at(ranges, Size.CURVE, end));
    return fit.predict(plant).orElseThrow().medianG();
  }

  private static OptionalDouble at(
      Map<Size, Validity.Range> ranges, Size size, ToDoubleFunction<Validity.Range> end) {
    return ranges.containsKey(size)
        ? OptionalDouble.of(end.applyAsDouble(ranges.get(size)))
        : OptionalDouble.empty();
  }
}
