// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Three rafts of one pond and one age, without past cycles: 8 cm2 on the first evening, 10 % a day
 * more, and what each test does to all of them at once from the evening of day 9 on.
 */
class PondGrowthTest {
  private static final double RATE = 0.1;
  private static final int FROM = 9;
  private static final int EVENINGS = 26;
  private static final String WINDOW =
      """
            harvest: {head_weight_g: 150, minimum_g: 120, ready_share: 0.9, window_dat: [20, 30], trim_share: 0, pack_g: 150}
      """
          .indent(-2);

  @TempDir Path folder;

  /** Tells the share of the usual growth that a day has. */
  private interface Share {
    double of(int dat);
  }

  private Farm farm(String pond, Share share) {
    Farm farm = new Farm(folder, 3).crop(WINDOW);
    for (String raft : List.of("R-1", "R-2", "R-3")) {
      farm.raft(raft, pond, 0, EVENINGS, (site, dat) -> ln(dat, share));
    }
    return farm;
  }

  private static double ln(int dat, Share share) {
    double ln = Math.log(8);
    for (int day = 1; day <= dat; day++) {
      ln += RATE * share.of(day);
    }
    return ln;
  }

  private static Share from(double share) {
    return dat -> dat > FROM ? share : 1;
  }

  private Verdict pond(Farm farm, int day) {
    return farm.group(day, Judged.Scope.POND, "P1").verdict();
  }

  @Test
  void pondWhosePlantsAllStopIsStalledWithinFourEveningsThoughNoneLagsBehindTheOthers() {
    Farm farm = farm("P1", from(0));
    assertEquals(Verdict.NOT_TOLD, pond(farm, FROM));
    assertEquals(Verdict.STALLED, pond(farm, FROM + 4));
    assertEquals(Verdict.STALLED, pond(farm, FROM + 8), "it is still said");
  }

  @Test
  void wordsSayWhatGrewByHowMuchAndWhatItIsHeldAgainst() {
    String words = farm("P1", from(0)).group(FROM + 5, Judged.Scope.POND, "P1").evidence();
    // exp(0.1) - 1 = 10.5 % a day before; 72 plants on three boards of 24.
    assertTrue(
        words.matches(
            "72 plants of crop pretend on rafts R-1, R-2, R-3, all together, have all but stopped"
                + " growing: [+-]0\\.\\d % a day since 1[34] Jan, \\+10\\.\\d % a day before that;"
                + " judging by their own earlier growth, \\+\\d\\.\\d % a day would be usual at"
                + " their age"),
        words);
  }

  @Test
  void plantsHeldAgainstNothingButPlantsThatStoppedTooAreNotOnTrack() {
    Farm farm = farm("P1", from(0));
    assertEquals(Verdict.NOT_TOLD, farm.group(FROM + 5, Judged.Scope.RAFT, "R-1").verdict());
    List<Judged> sites =
        farm.sites(FROM + 5, "R-1").stream().filter(row -> row.verdict().isCalm()).toList();
    assertTrue(sites.size() > 12, sites.size() + " of 24");
    for (Judged site : sites) {
      assertEquals(Verdict.NOT_TOLD, site.verdict());
      assertTrue(site.evidence().startsWith(SlowingWords.ALL_SLOWED), site.evidence());
    }
  }

  @Test
  void farmWithoutNamesOfPondsIsAskedAsOne() {
    Farm farm = farm("", from(0));
    assertEquals(Verdict.STALLED, farm.group(FROM + 4, Judged.Scope.POND, "").verdict());
  }

  @Test
  void leafThatIsLostIsToldWithinThreeEveningsEvenOfPlantsReadyToHarvest() {
    assertEquals(Verdict.STALLED, pond(farm("P1", from(-0.6)), FROM + 3));
    Farm late = farm("P1", dat -> dat > 21 ? -0.6 : 1);
    Judged row = late.group(25, Judged.Scope.POND, "P1");
    assertEquals(Verdict.STALLED, row.verdict());
    assertTrue(row.evidence().contains("all together, lose leaf: -"), row.evidence());
  }

  @Test
  void growthThatStopsOnceTheHarvestHasBegunIsNotToldFromPlantsThatAreGrown() {
    Farm farm = farm("P1", dat -> dat > 20 ? 0 : 1);
    assertEquals(Verdict.NOT_TOLD, pond(farm, 25));
  }

  @Test
  void cloudyWeekThatTakesAThirdIsNotAStop() {
    Farm farm = farm("P1", dat -> dat > FROM && dat <= FROM + 7 ? 0.67 : 1);
    for (int day = FROM; day < 20; day++) {
      assertTrue(pond(farm, day) != Verdict.STALLED, "evening " + day);
    }
  }

  @Test
  void growthThatComesBackIsNoLongerCalled() {
    Farm farm = farm("P1", dat -> dat > FROM && dat <= FROM + 5 ? 0 : 1);
    assertEquals(Verdict.STALLED, pond(farm, FROM + 5));
    assertEquals(Verdict.NOT_TOLD, pond(farm, FROM + 9));
  }

  /** A logistic curve to 250 cm2, rate constant 0.25: growth falls from 24 to 5 % a day. */
  @Test
  void cropThatFlattensTowardsItsHarvestIsNotAStop() {
    Farm farm = new Farm(folder, 5).crop(WINDOW);
    for (String raft : List.of("R-1", "R-2", "R-3")) {
      farm.raft(
          raft, "P1", 0, EVENINGS, (site, dat) -> Math.log(250 / (1 + 30 * Math.exp(-0.25 * dat))));
    }
    for (int day = 5; day < EVENINGS; day++) {
      assertEquals(Verdict.NOT_TOLD, pond(farm, day), "evening " + day);
    }
  }

  @Test
  void photosThatErrTogetherByAFewPercentAreNotTakenForTheirPlants() {
    Random random = new Random(11);
    double[] light = random.doubles(EVENINGS, -0.07, 0.07).toArray();
    Farm farm = new Farm(folder, 6).crop(WINDOW);
    for (String raft : List.of("R-1", "R-2", "R-3")) {
      farm.raft(raft, "P1", 0, EVENINGS, (site, dat) -> ln(dat, d -> 1) + light[dat]);
    }
    for (int day = 0; day < EVENINGS; day++) {
      assertEquals(Verdict.NOT_TOLD, pond(farm, day), "evening " + day);
    }
  }

  @Test
  void oneLampThatIsExchangedIsNoStop() {
    Farm farm = new Farm(folder, 6).crop(WINDOW);
    for (String raft : List.of("R-1", "R-2", "R-3")) {
      farm.raft(raft, "P1", 0, EVENINGS, (site, dat) -> ln(dat, d -> 1) - (dat > FROM ? 0.08 : 0));
    }
    for (int day = 0; day < EVENINGS; day++) {
      assertEquals(Verdict.NOT_TOLD, pond(farm, day), "evening " + day);
    }
  }

  /** The largest half of each board is harvested: what is left is smaller, and grows on. */
  @Test
  void plantsThatWereHarvestedAreNoLossOfLeaf() {
    StringBuilder events = new StringBuilder();
    Farm farm = new Farm(folder, 3).crop(WINDOW);
    for (String raft : List.of("R-1", "R-2", "R-3")) {
      farm.plant(raft, "P1", 0, EVENINGS);
      for (int site = 0; site < Farm.SITES; site++) {
        boolean large = site < Farm.SITES / 2;
        for (int dat = 0; dat < (large ? FROM : EVENINGS); dat++) {
          double ln = ln(dat, d -> 1) + (large ? 0.3 : 0);
          farm.look(raft, dat, Farm.measure(Farm.site(site), Math.exp(ln), List.of()));
        }
      }
      events
          .append(Farm.FIRST.plusDays(FROM))
          .append("T09:00,harvested,")
          .append(raft)
          .append(",A1-C4,,,,\n");
    }
    farm.events(events.toString());
    for (int day = FROM - 2; day < FROM + 8; day++) {
      assertEquals(Verdict.NOT_TOLD, pond(farm, day), "evening " + day);
    }
  }

  /** Leaves are cut, a raft an evening: half the plants stand lower, yet none shrinks for long. */
  @Test
  void raftsThatAreCutOneAfterTheOtherAreNoLossOfLeafOfThePond() {
    Farm farm = new Farm(folder, 8);
    for (int raft = 0; raft < 8; raft++) {
      int cut = FROM + raft;
      farm.raft(
          "R-" + raft,
          "P1",
          0,
          EVENINGS,
          (site, dat) -> ln(dat, d -> 0.7) + (dat > cut ? Math.log(0.6) : 0));
    }
    for (int day = FROM; day < FROM + 10; day++) {
      Judged pond = farm.group(day, Judged.Scope.POND, "P1");
      assertEquals(Verdict.NOT_TOLD, pond.verdict(), day + ": " + pond.evidence());
    }
  }

  /** A photo that is off by a third, of a raft that speaks for the pond alone. */
  @Test
  void oneEveningsPhotoThatIsFarOffIsNotBelievedAlone() {
    Farm farm = new Farm(folder, 6).crop(WINDOW);
    farm.raft("R-1", "P1", 0, EVENINGS, (site, dat) -> ln(dat, d -> 1) - (dat == FROM ? 0.33 : 0));
    for (int day = 0; day < 20; day++) {
      assertEquals(Verdict.NOT_TOLD, pond(farm, day), "evening " + day);
    }
  }

  /**
   * Just set out, plants grow by a third of the usual for four days (common practice, no source).
   */
  @Test
  void firstDaysAfterTransplantingAreNoStop() {
    Farm farm = farm("P1", dat -> dat <= 4 ? 0.33 : 1);
    for (int day = 0; day < 20; day++) {
      assertEquals(Verdict.NOT_TOLD, pond(farm, day), "evening " + day);
    }
  }

  @Test
  void threePlantsAreTooFewToSpeakForAPond() {
    Farm farm = new Farm(folder, 3).crop(WINDOW).plant("R-1", "P1", 0, EVENINGS);
    for (int dat = 0; dat < EVENINGS; dat++) {
      for (int site = 0; site < 3; site++) {
        farm.look("R-1", dat, Farm.measure(Farm.site(site), Math.exp(ln(dat, from(0))), List.of()));
      }
    }
    assertEquals(Verdict.NOT_TOLD, pond(farm, FROM + 6));
  }
}
