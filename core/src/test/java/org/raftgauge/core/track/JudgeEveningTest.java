// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Verdicts on a pretended farm whose truth is known: see {@link Pretend}. */
class JudgeEveningTest {
  private static final int RAFTS = 12;

  @TempDir Path folder;

  /** Goes through the last first. */
  private static final Spread BACKWARDS =
      new Spread() {
        @Override
        public <T, R> List<R> map(List<T> all, Function<T, R> one) {
          List<R> results = new ArrayList<>();
          for (int i = all.size() - 1; i >= 0; i--) {
            results.add(0, one.apply(all.get(i)));
          }
          return results;
        }
      };

  private Pretend farm() {
    return new Pretend(folder, RAFTS, 5);
  }

  @Test
  void averagePlantIsOnTrackAndItsExpectedAreaIsTheMedian() {
    Judged row = farm().photograph(8, (raft, site, day) -> 0).site(0, 0, 8);
    assertEquals(Verdict.ON_TRACK, row.verdict());
    Judged.Share share = row.share().orElseThrow();
    // 8 exp(0.12 * 8) = 20.89 cm2, by the pretended farm's own curve.
    assertEquals(20.89, share.expectedAreaCm2(), 0.05 * 20.89);
    assertEquals(1, share.shareOfExpected(), 0.06);
    assertTrue(share.lo95() < 1 && share.hi95() > 1, share.toString());
    assertEquals(Basis.COHORT, share.basis());
  }

  @Test
  void plantAtTwoThirdsIsLaggingAndItsDaysBehindFollowFromTheRate() {
    Pretend farm =
        farm().photograph(8, (raft, site, day) -> raft == 0 && site == 0 ? Math.log(0.66) : 0);
    Judged row = farm.site(0, 0, 8);
    assertEquals(Verdict.LAGGING, row.verdict());
    assertEquals(0.66, row.share().orElseThrow().shareOfExpected(), 0.04);
    // -ln 0.66 / 0.12 = 3.46 days.
    assertEquals(3.46, row.share().orElseThrow().daysBehind().orElseThrow(), 0.6);
    assertEquals(Pattern.NONE, row.pattern());
  }

  @Test
  void plantAtNineTenthsIsNotLagging() {
    Pretend farm =
        farm().photograph(8, (raft, site, day) -> raft == 0 && site == 0 ? Math.log(0.9) : 0);
    for (int day = 0; day <= 8; day++) {
      assertEquals(Verdict.ON_TRACK, farm.site(0, 0, day).verdict(), "evening " + day);
    }
  }

  @Test
  void plantThatStopsGrowingIsStalledWithinFourDays() {
    Pretend farm =
        farm()
            .photograph(
                10,
                (raft, site, day) ->
                    raft == 0 && site == 0 ? -Pretend.RATE * Math.max(0, day - 6) : 0);
    assertEquals(Verdict.ON_TRACK, farm.site(0, 0, 6).verdict());
    assertEquals(Verdict.STALLED, farm.site(0, 0, 10).verdict());
    Judged.Change change = farm.site(0, 0, 10).change().orElseThrow();
    assertTrue(change.ratePerDay() < 0.5 * change.expectedRatePerDay(), change.toString());
  }

  @Test
  void onePhotoThatIsFarOutDoesNotMakeAPlantLag() {
    Pretend farm =
        farm()
            .photograph(
                9, (raft, site, day) -> raft == 0 && site == 0 && day == 8 ? Math.log(0.6) : 0);
    assertEquals(Verdict.ON_TRACK, farm.site(0, 0, 8).verdict());
    assertEquals(Verdict.ON_TRACK, farm.site(0, 0, 9).verdict());
  }

  @Test
  void areaThatNoGrowthExplainsIsHeldAndForgottenTheNextEvening() {
    Pretend farm =
        farm()
            .photograph(
                9, (raft, site, day) -> raft == 0 && site == 0 && day == 8 ? Math.log(50) : 0);
    Judged odd = farm.site(0, 0, 8);
    assertEquals(Verdict.HELD, odd.verdict());
    assertTrue(
        odd.evidence()
            .matches(
                "this photo shows (4[5-9]|5[0-5]) times the leaf that its photos before let"
                    + " expect, more than any growth; photograph it again, and look whether"
                    + " another plant stands there"),
        odd.evidence());
    assertEquals(Verdict.ON_TRACK, farm.site(0, 0, 9).verdict());
    assertEquals(Verdict.ON_TRACK, farm.site(0, 1, 8).verdict());
  }

  @Test
  void anotherPlantThatStaysIsBelievedOnItsSecondEvening() {
    Pretend farm =
        farm()
            .photograph(
                11, (raft, site, day) -> raft == 0 && site == 0 && day < 8 ? Math.log(0.05) : 0);
    assertEquals(Verdict.HELD, farm.site(0, 0, 8).verdict());
    for (int evening = 9; evening <= 11; evening++) {
      Judged site = farm.site(0, 0, evening);
      assertEquals(Verdict.ON_TRACK, site.verdict(), evening + ": " + site.evidence());
    }
  }

  @Test
  void verdictOfAnEveningDoesNotChangeWhenLaterPhotosCome() {
    Pretend short_ = new Pretend(folder, RAFTS, 5).photograph(5, (r, s, d) -> 0);
    Pretend long_ = new Pretend(folder, RAFTS, 5).photograph(5, (r, s, d) -> 0);
    List<Judged> before = short_.judge(5);
    long_.say(0, 6, Pretend.measure(0, 1, false, ""));
    assertEquals(before, long_.judge(5));
  }

  @Test
  void stepOfOneBenchIsTheCamerasAndNoPlantIsBlamed() {
    Pretend farm =
        new Pretend(folder, RAFTS, 5)
            .withOneBench()
            .photograph(9, (raft, site, day) -> day >= 7 ? Math.log(0.85) : 0);
    List<Judged> stations = farm.groups(7, Judged.Scope.STATION);
    assertEquals(1, stations.size());
    assertEquals("bench", stations.get(0).place().station());
    assertEquals(
        "all 12 rafts at station bench stepped by -15 % off their own growth in one evening,"
            + " whatever their size: the camera, not the plants; taken off until mended",
        stations.get(0).evidence());
    for (int day = 7; day <= 9; day++) {
      assertEquals(Set.of(), slow(farm, day), "evening " + day);
    }
    assertTrue(
        farm.groups(9, Judged.Scope.STATION).get(0).evidence().contains("corrected by +1"),
        farm.groups(9, Judged.Scope.STATION).toString());
  }

  /** Returns the plants that are called slow though their own share is at least 0.85. */
  private static Set<String> slow(Pretend farm, int day) {
    return farm.sites(day).entrySet().stream()
        .filter(e -> Set.of(Verdict.LAGGING, Verdict.STALLED).contains(e.getValue().verdict()))
        .map(Map.Entry::getKey)
        .filter(key -> farm.ownShare(key) >= 0.85)
        .collect(Collectors.toSet());
  }

  @Test
  void stepUnderAStationThatSeesOnePondIsHeldForAnEveningAndAskedAbout() {
    Pretend farm =
        farm().photograph(8, (raft, site, day) -> day >= 7 && raft % 2 == 0 ? Math.log(0.8) : 0);
    Judged station = farm.groups(7, Judged.Scope.STATION).get(0);
    assertEquals("bench-0", station.place().station());
    assertTrue(station.evidence().endsWith("check both"), station.evidence());
    assertEquals(Verdict.HELD, farm.site(0, 0, 7).verdict());
    assertEquals(Verdict.ON_TRACK, farm.site(0, 0, 8).verdict());
    assertEquals(Verdict.ON_TRACK, farm.site(1, 0, 7).verdict());
  }

  @Test
  void pondThatSlowsIsNamedAsThePond() {
    Pretend farm =
        new Pretend(folder, RAFTS, 5)
            .withOneBench()
            .photograph(14, (raft, site, day) -> raft % 2 == 0 ? -0.05 * Math.max(0, day - 6) : 0);
    // 10 % are lost between evening 8 and 9; within three days of that is evening 11.
    Judged pond = farm.groups(11, Judged.Scope.POND).get(0);
    assertEquals("pond-0", pond.place().pond());
    assertEquals(Verdict.LAGGING, pond.verdict());
    assertEquals(Verdict.ON_TRACK, farm.groups(11, Judged.Scope.POND).get(1).verdict());
    assertEquals(List.of(), farm.groups(11, Judged.Scope.STATION));
  }

  @Test
  void oneBadPhotoOfARaftIsHeldNotBelieved() {
    Pretend farm =
        farm().photograph(8, (raft, site, day) -> raft == 0 && day == 7 ? Math.log(0.7) : 0);
    assertEquals(Verdict.HELD, farm.site(0, 0, 7).verdict());
    assertEquals(
        "the whole raft departs from its own growth in one photo", farm.site(0, 0, 7).evidence());
    assertEquals(Verdict.ON_TRACK, farm.site(0, 0, 8).verdict());
  }

  @Test
  void bareSiteIsEmptyWhereNothingGrewAndDeadWhereSomethingDid() {
    Pretend farm = farm().photograph(6, (raft, site, day) -> 0);
    for (int day = 0; day <= 6; day++) {
      farm.say(0, day, Pretend.measure(5, 0, false, ""));
    }
    farm.say(1, 6, Pretend.measure(7, 0, false, ""));
    assertEquals(Verdict.EMPTY, farm.site(0, 5, 6).verdict());
    assertEquals(Verdict.DEAD, farm.site(1, 7, 6).verdict());
    assertEquals("0 % of its largest leaf area before is left", farm.site(1, 7, 6).evidence());
  }

  @Test
  void heldSiteIsHeldWithItsReason() {
    Pretend farm = farm().photograph(4, (raft, site, day) -> 0);
    farm.say(0, 4, Pretend.measure(3, 0, false, "glare over the site"));
    assertEquals(Verdict.HELD, farm.site(0, 3, 4).verdict());
    assertEquals("glare over the site", farm.site(0, 3, 4).evidence());
  }

  @Test
  void closedSiteIsNotCalledSmallForWhatItsNeighboursCover() {
    Pretend farm = farm().photograph(9, (raft, site, day) -> 0);
    for (int day = 7; day <= 9; day++) {
      // A lower bound of 60 % of what it has.
      farm.say(0, day, Pretend.measure(0, 0.6 * 8 * Math.exp(0.12 * day), true, ""));
    }
    assertEquals(Verdict.ON_TRACK, farm.site(0, 0, 9).verdict());
  }

  @Test
  void anEveningIsJudgedAlikeInWhateverOrderItsRaftsAreGoneThrough() {
    Pretend farm =
        farm().photograph(8, (raft, site, day) -> raft == 0 && site == 0 ? Math.log(0.66) : 0);
    assertEquals(farm.said(8, Spread.IN_TURN), farm.said(8, BACKWARDS));
  }
}
