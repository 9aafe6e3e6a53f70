// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Finds plants whose leaves are pale: lighter or yellower than their cohort's, and past an absolute
 * limit on the board's white.
 *
 * <p>Colours are CIELAB in evened light, so L* 100 is the board. Chlorosis makes leaves lighter and
 * turns their hue from green (h near 120 degrees) towards yellow (90). A green cohort is told by
 * both, a red one by lightness alone. A plant counts too where the share of pale tissue is past 30
 * % and far from its cohort's. The limits, L* 65 and h 122 degrees, are our own choice: healthy
 * green lettuce lies at L* 45 to 60 and h 115 to 128 (from memory, no source), and a basil that
 * yellows goes from 128 to 121, so that the cohort decides, not the limit.
 */
final class FindPale {
  /** Lightness from which leaves can be pale, and hue in degrees up to which. */
  private static final double PALE_L = 65;

  private static final double PALE_HUE = 122;
  private static final double PALE_FRACTION = 0.3;
  private static final double FAR = 3;
  private static final double LEAST_SD_L = 2;
  private static final double LEAST_SD_HUE = 2;
  private static final double LEAST_SD_FRACTION = 0.03;
  private static final int FEWEST = 3;

  private final Map<Cohort, Usual> usual = new HashMap<>();

  /** What is usual in a cohort. */
  private record Usual(RobustCentre lightness, RobustCentre hue, RobustCentre fraction) {
    static Usual of(List<SiteMeasure.Colour> colours) {
      return new Usual(
          RobustCentre.of(colours.stream().mapToDouble(SiteMeasure.Colour::labL).toArray()),
          RobustCentre.of(colours.stream().mapToDouble(FindPale::hue).toArray()),
          RobustCentre.of(
              colours.stream().mapToDouble(SiteMeasure.Colour::paleFraction).toArray()));
    }

    boolean green() {
      return hue.centre() > 90;
    }
  }

  FindPale(List<Follow> tonight) {
    Map<Cohort, List<SiteMeasure.Colour>> colours = new HashMap<>();
    for (Follow plant : tonight) {
      colour(plant)
          .ifPresent(c -> colours.computeIfAbsent(plant.cohort(), k -> new ArrayList<>()).add(c));
    }
    colours.forEach((cohort, of) -> usual.put(cohort, Usual.of(of)));
  }

  /** Says whether a plant's leaves are pale. */
  boolean pale(Follow plant) {
    Optional<SiteMeasure.Colour> colour = colour(plant);
    Usual of = usual.get(plant.cohort());
    if (colour.isEmpty() || of.lightness().n() < FEWEST) {
      return false;
    }
    SiteMeasure.Colour own = colour.get();
    boolean lighter = own.labL() >= PALE_L && far(own.labL(), of.lightness(), LEAST_SD_L);
    boolean yellower =
        of.green() && hue(own) <= PALE_HUE && far(-hue(own), minus(of.hue()), LEAST_SD_HUE);
    boolean spotted =
        own.paleFraction() >= PALE_FRACTION
            && far(own.paleFraction(), of.fraction(), LEAST_SD_FRACTION);
    return lighter || yellower || spotted;
  }

  /** Returns why a plant is pale, in words. */
  String words(Follow plant) {
    SiteMeasure.Colour own = colour(plant).orElseThrow();
    Usual of = usual.get(plant.cohort());
    return String.format(
        Locale.ROOT,
        "leaves at L* %.0f and hue %.0f degrees where its cohort has %.0f and %.0f; %.0f %% of"
            + " them pale",
        own.labL(),
        hue(own),
        of.lightness().centre(),
        of.hue().centre(),
        100 * own.paleFraction());
  }

  private static boolean far(double value, RobustCentre usual, double leastSd) {
    return value > usual.centre() + FAR * Math.max(leastSd, usual.spread());
  }

  private static RobustCentre minus(RobustCentre centre) {
    return new RobustCentre(-centre.centre(), centre.spread(), centre.n());
  }

  /** Returns the hue angle, degrees: 90 is yellow, 180 green-cyan, 0 red. */
  private static double hue(SiteMeasure.Colour colour) {
    return Math.toDegrees(Math.atan2(colour.labB(), colour.labA()));
  }

  private static Optional<SiteMeasure.Colour> colour(Follow plant) {
    return plant.series().last().measure().colour().stream().findFirst();
  }
}
