// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
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

  private static String count(List<Weighed> weighed, Regime regime) {
    return weighed.size() + " weighings of " + regime + " sites";
  }
}
