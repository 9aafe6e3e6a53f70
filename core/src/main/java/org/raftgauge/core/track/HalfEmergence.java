// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Finds when half of a tray's cells had emerged: where the share emerged crosses a half, by a
 * straight line between evenings; its interval is where the ends of the share's own interval cross
 * it.
 *
 * <p>Source of the interval of a share: Wilson 1927, J. Am. Stat. Assoc. 22:209-212.
 */
final class HalfEmergence {
  private static final double HALF = 0.5;

  private HalfEmergence() {}

  /** Finds it from shares by evening, in order; nothing where no half has emerged. */
  static Optional<Tray.HalfEmerged> of(List<Tray.Emerged> days) {
    OptionalDouble middle = crossing(days, Tray.Emerged::share);
    if (middle.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble lo = crossing(days, d -> wilson(d, 1));
    OptionalDouble hi = crossing(days, d -> wilson(d, -1));
    return Optional.of(
        new Tray.HalfEmerged(middle.getAsDouble(), lo.orElse(middle.getAsDouble()), hi));
  }

  /** Returns the upper (sign 1) or lower (sign -1) end of the 95 % interval of the share. */
  private static double wilson(Tray.Emerged day, int sign) {
    double n = day.planted();
    double p = day.share();
    double z = Normal.Z975;
    double middle = p + z * z / (2 * n);
    double half = z * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
    return (middle + sign * half) / (1 + z * z / n);
  }

  private static OptionalDouble crossing(
      List<Tray.Emerged> days, ToDoubleFunction<Tray.Emerged> share) {
    // On the day of sowing nothing has emerged.
    double dayBefore = 0;
    double before = 0;
    for (Tray.Emerged day : days) {
      double now = share.applyAsDouble(day);
      if (now >= HALF) {
        double part = (HALF - before) / (now - before);
        return OptionalDouble.of(dayBefore + part * (day.das() - dayBefore));
      }
      dayBefore = day.das();
      before = now;
    }
    return OptionalDouble.empty();
  }
}
