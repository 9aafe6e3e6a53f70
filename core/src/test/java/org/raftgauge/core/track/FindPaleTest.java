// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.site.SiteMeasure.Colour;

/** Colours of healthy green lettuce from memory: L* 52, a* -22, b* 34, so a hue of 123 degrees. */
class FindPaleTest {
  private static final int LAST = 5;

  @TempDir Path folder;

  /** Returns the sites that are called pale where one has a colour of its own. */
  private List<SiteId> pale(Colour usual, Colour own) {
    return rows(usual, own).stream()
        .filter(r -> r.verdict() == Verdict.PALE || r.also().contains(Verdict.PALE))
        .map(r -> r.place().site().orElseThrow())
        .collect(Collectors.toList());
  }

  private List<Judged> rows(Colour usual, Colour own) {
    Random random = new Random(6);
    Farm farm = new Farm(folder, 6).plant("A", "P1", 0, LAST + 1);
    for (int dat = 0; dat <= LAST; dat++) {
      for (int site = 0; site < Farm.SITES; site++) {
        Colour colour = site == 5 ? own : vary(usual, random);
        double area = Math.exp(2 + 0.1 * dat);
        farm.look("A", dat, Farm.measure(Farm.site(site), area, List.of(colour)));
      }
    }
    return farm.sites(LAST, "A");
  }

  private static Colour vary(Colour c, Random random) {
    return new Colour(
        c.labL() + 1.5 * random.nextGaussian(),
        c.labA() + random.nextGaussian(),
        c.labB() + random.nextGaussian(),
        c.paleFraction(),
        0);
  }

  private static Colour green(double l, double a, double b) {
    return new Colour(l, a, b, 0, 0);
  }

  private static final Colour GREEN = green(52, -22, 34);

  @Test
  void brownPlantIsDeadAndItsLeafIsSaidToBeBrownNotGone() {
    Judged row =
        rows(GREEN, new Colour(45, 5, 30, 0, 0.8)).stream()
            .filter(r -> r.place().site().equals(Optional.of(Farm.site(5))))
            .findFirst()
            .orElseThrow();
    assertEquals(Verdict.DEAD, row.verdict());
    assertEquals("80 % of its leaf is brown", row.evidence());
  }

  /** Judges a plant whose leaf was brown by these shares, one evening after another. */
  private Judged browning(double... fractions) {
    Farm farm = new Farm(folder, 6).plant("A", "P1", 0, fractions.length);
    for (int dat = 0; dat < fractions.length; dat++) {
      for (int site = 0; site < Farm.SITES; site++) {
        Colour own = new Colour(45, 5, 30, 0, fractions[dat]);
        double area = Math.exp(2 + 0.1 * dat);
        farm.look("A", dat, Farm.measure(Farm.site(site), area, List.of(site == 5 ? own : GREEN)));
      }
    }
    return farm.sites(fractions.length - 1, "A").stream()
        .filter(r -> r.place().site().equals(Optional.of(Farm.site(5))))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void plantThatWasBrownStaysDeadOnAnEveningThatShowsLessOfIt() {
    Judged row = browning(0.9, 0.6, 0.95, 0.4);
    assertEquals(Verdict.DEAD, row.verdict());
    assertEquals(
        "40 % of its leaf is brown, and more of it was on an evening before", row.evidence());
    assertTrue(browning(0, 0.2, 0.4, 0.45).verdict() != Verdict.DEAD);
  }

  @Test
  void oneEveningsBrownIsForgottenWhereThePlantIsGreenAgain() {
    assertTrue(browning(0, 0, 0.9, 0.1).verdict() != Verdict.DEAD);
  }

  @Test
  void plantOfItsCohortsColourIsNotPale() {
    assertEquals(List.of(), pale(GREEN, GREEN));
  }

  @Test
  void yellowedPlantIsPaleByItsHue() {
    // atan2(40, -10) is 104 degrees: under the limit of 110 and 19 under the cohort's 123.
    assertEquals(List.of(Farm.site(5)), pale(GREEN, green(58, -10, 40)));
    Judged row =
        rows(GREEN, green(58, -10, 40)).stream()
            .filter(r -> r.verdict() == Verdict.PALE)
            .findFirst()
            .orElseThrow();
    assertTrue(
        row.evidence()
            .matches(
                "leaves at L\\* 58 and hue 104 degrees where its cohort has 5[12] and"
                    + " 12[234]; 0 % of them pale"),
        row.evidence());
  }

  @Test
  void greenPlantFarYellowerThanItsCohortIsPale() {
    // A yellowing basil of path-traced photos: L* 50.1 and hue 121.7 where its raft has 43.6 and
    // 128.8.
    assertEquals(List.of(Farm.site(5)), pale(green(44, -25, 31), green(50, -18.4, 29.8)));
    // Half as far it is a plant of its own, not a pale one.
    assertEquals(List.of(), pale(green(44, -25, 31), green(47, -21.7, 31)));
  }

  @Test
  void bleachedPlantIsPaleByItsLightness() {
    // The hue, atan2(25, -16) = 123 degrees, is as ever; L* 70 is past 65.
    assertEquals(List.of(Farm.site(5)), pale(GREEN, green(70, -16, 25)));
  }

  @Test
  void lighterPlantThatIsStillGreenEnoughOnTheBoardsWhiteIsNotPale() {
    // Ten units over its cohort, but under the absolute limits: L* 62 and 123 degrees.
    assertEquals(List.of(), pale(GREEN, green(62, -22, 34)));
  }

  @Test
  void varietyThatIsLightByNatureIsNotPale() {
    assertEquals(List.of(), pale(green(72, -14, 38), green(73, -14, 38)));
  }

  @Test
  void redCohortIsNotToldByItsHue() {
    // Hue 0 to 60 degrees is red, always under the limit; lightness alone tells.
    assertEquals(List.of(), pale(green(30, 18, 8), green(34, 18, 20)));
    assertEquals(List.of(Farm.site(5)), pale(green(30, 18, 8), green(68, 6, 20)));
  }

  @Test
  void shareOfPaleTissueFarFromTheCohortsIsPale() {
    assertEquals(List.of(Farm.site(5)), pale(GREEN, new Colour(54, -20, 34, 0.4, 0)));
    assertEquals(List.of(), pale(GREEN, new Colour(54, -20, 34, 0.2, 0)));
  }
}
