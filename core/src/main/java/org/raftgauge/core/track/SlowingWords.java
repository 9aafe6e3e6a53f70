// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Says in words how the plants of a pond grew together, and what that was held against. */
final class SlowingWords {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final int MOST_RAFTS = 6;

  /** What is said of a plant or raft that stands well beside others that have slowed with it. */
  static final String ALL_SLOWED =
      "cannot be told while all that it is compared with grows too little: ";

  private SlowingWords() {}

  /** Words the worst that was found of a pond, and what else was. */
  static String of(PondGrowth.Found found, List<PondGrowth.Found> all) {
    StringBuilder words = new StringBuilder(of(found));
    for (PondGrowth.Found other : all) {
      if (!other.equals(found)) {
        words.append("; ").append(who(other)).append(" grow too little as well");
      }
    }
    return words.toString();
  }

  private static String of(PondGrowth.Found found) {
    Slowing slowing = found.slowing();
    String how =
        switch (slowing.kind()) {
          case SHRINKS -> "lose leaf";
          case STOPPED -> "have all but stopped growing";
          case SLOWED -> "have slowed by more than dull weather is known to take";
        };
    return who(found)
        + ", all together, "
        + how
        + ": "
        + change(slowing.rate())
        + " a day since "
        + DAY.format(LocalDate.ofEpochDay(Math.round(slowing.since())))
        + ", "
        + change(slowing.rateBefore())
        + " a day before that; judging by their own earlier growth, "
        + change(slowing.rateForetold())
        + " a day would be usual at their age";
  }

  private static String who(PondGrowth.Found found) {
    return found.plants() + " plants of crop " + found.crop() + " on " + rafts(found);
  }

  private static String rafts(PondGrowth.Found found) {
    int rafts = found.rafts().size();
    if (rafts > MOST_RAFTS) {
      return rafts + " rafts";
    }
    return (rafts == 1 ? "raft " : "rafts ") + String.join(", ", found.rafts());
  }

  private static String change(double rate) {
    double percent = Math.round(1000 * Math.expm1(rate)) / 10.0;
    return String.format(Locale.ROOT, "%+.1f %%", percent == 0 ? 0.0 : percent);
  }
}
