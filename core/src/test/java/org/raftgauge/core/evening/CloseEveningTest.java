// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.report.CurvesTable;
import org.raftgauge.core.report.VerdictsTable;
import org.raftgauge.core.report.WorklistTable;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/** An evening of {@link SmallFarm}: 8 rafts of 6 plants. */
class CloseEveningTest {
  @TempDir Path folder;

  private SmallFarm farm() {
    return new SmallFarm(folder);
  }

  @Test
  void laterPhotosChangeNothing() {
    assertEquals(farm().close(9, 9), farm().close(14, 9));
  }

  @Test
  void laterRowsOfTheBookChangeNothing() {
    EveningResult plain = farm().close(9, 9);
    EveningResult later =
        farm()
            .file(
                "events.csv",
                "at,kind,raft,site\n2027-03-11T12:00,died,R-1,A1\n2027-03-12T09:00,cut,R-2,\n")
            .file(
                "weighings.csv",
                "raft,site,weighed_at,fresh_weight_g\nR-1,A2,2027-03-12T09:00,80\n")
            .file(
                "harvests.csv",
                "raft,harvested_at,heads,total_weight_g\nR-3,2027-03-12T09:00,6,900\n")
            .file("calls.csv", "raft,site,called_on,call\nR-1,A1,2027-03-11,lagging\n")
            .close(9, 9);
    assertEquals(plain, later);
  }

  @Test
  void plantThatDiedThatEveningIsNotJudgedAndOneThatDiesTomorrowIs() {
    String head = "at,kind,raft,site\n";
    EveningResult tonight =
        farm().file("events.csv", head + "2027-03-10T19:00,died,R-1,A1\n").close(9, 9);
    EveningResult tomorrow =
        farm().file("events.csv", head + "2027-03-11T12:00,died,R-1,A1\n").close(9, 9);
    // 8 rafts of 6 sites.
    assertEquals(Map.of(Verdict.ON_TRACK, 47), tonight.siteCounts());
    assertEquals(Map.of(Verdict.ON_TRACK, 48), tomorrow.siteCounts());
  }

  @Test
  void quietEveningHasAnEmptyWorklist() {
    assertEquals(List.of(), farm().close(9, 9).worklist());
  }

  @Test
  void verdictsCsvHasTheColumnsOfTheDesignAndARowForEachSite() {
    String csv = VerdictsTable.csv(farm().share(1, "B2", 0.6).close(9, 9).verdicts());
    List<String> lines = csv.lines().toList();
    // Design, appendix B.
    assertEquals(
        "scope,station,pond,raft,site,plant,crop,taken_at,dat,verdict,also,area_cm2,"
            + "expected_area_cm2,share_of_expected,share_lo95,share_hi95,days_behind,probability,z,"
            + "innovation,ewma,rgr_per_day,expected_rgr_per_day,p_value,q_value,reference,pattern,"
            + "evidence",
        lines.get(0));
    // 2 ponds, 8 rafts, 48 sites and the header; the two stations are in no doubt.
    assertEquals(59, lines.size());
    String row = lines.stream().filter(l -> l.contains(",R-1,B2,")).findFirst().orElseThrow();
    // Transplanted on 2027-03-01, photographed at 18:00 on 03-10: day 9.75.
    assertTrue(
        row.startsWith(
            "site,bench-1,P1,R-1,B2,R-1/B2/2027-03-01,small,2027-03-10T18:00:00+00:00,9.750,lagging,,"),
        row);
    String[] cells = row.split(",", -1);
    assertEquals(0.6, Double.parseDouble(cells[13]), 0.09, "share of expected");
    // -ln 0.6 / 0.12 = 4.3 days; the plant's own 14 % may shift it by 1.2 days.
    assertEquals(4.3, Double.parseDouble(cells[16]), 1.3, "days behind");
    assertEquals("cohort", cells[25]);
  }

  @Test
  void curvesCsvHasTheColumnsOfTheDesignAndThoseAppended() {
    List<String> lines = CurvesTable.csv(farm().close(12, 12).curves()).lines().toList();
    // Design, appendix B, then what was appended.
    assertEquals(
        "scope,raft,site,plant,fitted,reason,model,asymptote_cm2,rate_per_day,midpoint_dat,shape,"
            + "parameters_se,aicc,r2_ln_area,rgr_per_day,rgr_lo95_per_day,rgr_hi95_per_day,"
            + "days_to_target,n_photos,n_censored,discounted,pond,crop,dat,parameters,"
            + "target_reason,"
            + "days_to_target_lo95,days_to_target_hi95,target_area_cm2",
        lines.get(0));
    // 8 rafts and 48 sites.
    assertEquals(57, lines.size());
    assertTrue(lines.get(1).startsWith("raft,R-0,,,true,"), lines.get(1));
    assertTrue(lines.get(1).endsWith("crops.yaml sets no harvest for small,,,"), lines.get(1));
  }

  @Test
  void curveOfARaftAndOfAShrunkPlantGrowAtTheFarmsRate() {
    EveningResult result = farm().close(12, 12);
    CurveRow raft = curve(result, "R-3", "");
    CurveRow site = curve(result, "R-3", "A2");
    assertEquals("", raft.points().discountedDat().isEmpty() ? "" : raft.points().toString());
    CurveRow.Rate own = raft.curve().orElseThrow().rate().orElseThrow();
    CurveRow.Rate shrunk = site.curve().orElseThrow().rate().orElseThrow();
    // The farm grows by 0.12 a day throughout.
    assertEquals(SmallFarm.RATE, own.perDay(), 0.012);
    assertEquals(SmallFarm.RATE, shrunk.perDay(), 0.012);
    assertTrue(shrunk.lo95() < shrunk.perDay() && shrunk.perDay() < shrunk.hi95());
    assertTrue(site.reason().startsWith("shrunk to its cohort's curve"), site.reason());
    assertTrue(site.curve().get().aicc().isEmpty(), "the likelihood is not the plant's own");
    assertEquals(13, site.points().photos());
  }

  @Test
  void siteThatLagsGetsACurveOfItsOwn() {
    CurveRow row = curve(farm().share(2, "A1", 0.5).close(12, 12), "R-2", "A1");
    assertFalse(row.reason().startsWith("shrunk"), row.reason());
    assertTrue(row.curve().orElseThrow().aicc().isPresent());
  }

  @Test
  void youngPlantsSayWhyTheyHaveNoCurve() {
    EveningResult first = farm().close(0, 0);
    assertEquals("one open photo is too few", curve(first, "R-1", "A1").reason());
    assertEquals(
        "its cohort has too few evenings for a curve",
        curve(farm().close(2, 2), "R-1", "A1").reason());
    CurveRow fourth = curve(farm().close(4, 4), "R-1", "A1");
    assertTrue(fourth.curve().isPresent(), fourth.reason());
    assertEquals(SmallFarm.RATE, fourth.curve().get().rate().orElseThrow().perDay(), 0.02);
  }

  @Test
  void closedPlantWithoutAnOpenPhotoHasNoCurve() {
    SmallFarm farm = farm();
    for (int day = 0; day <= 8; day++) {
      farm.say(1, day, SmallFarm.measure(SiteId.parse("A1"), 20, true, ""));
    }
    CurveRow row = curve(farm.close(8, 8), "R-1", "A1");
    assertEquals("every photo is a lower bound: the plant is closed", row.reason());
    assertEquals(9, row.points().closed());
  }

  @Test
  void cropWithAHarvestWeightSaysThatTheTargetNeedsAGrader() {
    SmallFarm farm =
        farm()
            .harvest("head_weight_g: 150, minimum_g: 120, ready_share: 0.9, window_dat: [28, 38]");
    CurveRow row = curve(farm.close(8, 8), "R-1", "");
    assertTrue(row.target().days().isEmpty());
    assertEquals(
        "the harvest is set as a weight; an area for it needs a grader or a growth_curve",
        row.target().reason());
  }

  @Test
  void daysToTheTargetAreThoseOfTheCurveToTheAreaOfTheBooksCurve() {
    SmallFarm farm =
        farm()
            .harvest("head_weight_g: 150, minimum_g: 120, ready_share: 0.9, window_dat: [12, 38]")
            .more("growth_curve: {model: exponential, start_cm2: 8, rate_per_day: 0.12}");
    CurveRow row = curve(farm.close(8, 8), "R-1", "");
    // The farm grows by the book's curve: 8 exp(0.12 * 12) = 33.8 cm2 on day 12; photos are taken
    // three quarters into the day, so 12 - 8.75 = 3.25 days are left; rafts differ by some 5 %.
    assertEquals(8 * Math.exp(0.12 * 12), row.target().areaCm2().orElseThrow(), 1e-6);
    CurveRow.Days days = row.target().days().orElseThrow();
    assertEquals(3.25, days.days(), 0.5);
    assertTrue(days.lo95().orElseThrow() < days.days());
    assertTrue(days.hi95().orElseThrow() > days.days());
  }

  @Test
  void sizeThatIsReachedAlreadyIsSaidToBe() {
    SmallFarm farm =
        farm()
            .harvest("head_weight_g: 150, minimum_g: 120, ready_share: 0.9, window_dat: [3, 38]")
            .more("growth_curve: {model: exponential, start_cm2: 8, rate_per_day: 0.12}");
    CurveRow row = curve(farm.close(8, 8), "R-1", "A1");
    assertEquals(0, row.target().days().orElseThrow().days(), 0);
    assertEquals("reached by the last photo", row.target().reason());
  }

  @Test
  void worklistCsvWritesSitesAsAListAndNamesTheItem() {
    SmallFarm farm = farm().share(1, "A1", 0.5).share(1, "B3", 0.5);
    List<String> lines = WorklistTable.csv(farm.close(9, 9).worklist()).lines().toList();
    assertEquals("priority,action,station,pond,berth,raft,site,why,by,item", lines.get(0));
    assertEquals(2, lines.size(), "one row for both sites");
    assertTrue(
        lines.get(1).startsWith("2,inspect,,P1,2,R-1,A1;B3,They lag. Leaf area: "), lines.get(1));
    assertTrue(
        lines.get(1).endsWith(",2027-03-11,inspect-lagging/R-1/2027-03-01/A1+B3"), lines.get(1));
  }

  private static CurveRow curve(EveningResult result, String raft, String site) {
    return result.curves().stream()
        .filter(r -> r.place().raft().equals(raft))
        .filter(r -> r.place().site().map(SiteId::toString).orElse("").equals(site))
        .filter(r -> (r.scope() == Judged.Scope.RAFT) == site.isEmpty())
        .findFirst()
        .orElseThrow();
  }
}
