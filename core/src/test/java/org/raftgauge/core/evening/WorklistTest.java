// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.Task.Action;
import org.raftgauge.core.measure.RaftMeasure;

/** The worklist of evening 9 (2027-03-10) of {@link SmallFarm}. */
class WorklistTest {
  private static final String WINDOW =
      "head_weight_g: 150, minimum_g: 120, ready_share: 0.9, window_dat: ";

  @TempDir Path folder;

  private SmallFarm farm() {
    return new SmallFarm(folder);
  }

  private List<String> sentences(SmallFarm farm, Action action) {
    return farm.tasks(9, action).stream().map(Task::sentence).toList();
  }

  @Test
  void raftExpectedAndNotSeenIsToBePhotographed() {
    SmallFarm farm = farm().missed(3, 9).missed(3, 8);
    assertEquals(
        List.of(
            "Photograph raft R-3 (pond P1, berth 4) by 2027-03-11. Expected, not seen. Last seen on"
                + " 2027-03-08."),
        sentences(farm, Action.PHOTOGRAPH_AT_ALL));
    assertEquals(
        List.of("photograph/R-3/2027-03-10"),
        farm.tasks(9, Action.PHOTOGRAPH_AT_ALL).stream().map(Task::item).toList());
  }

  @Test
  void heldRaftIsToBePhotographedAgainAsAWhole() {
    assertEquals(
        List.of(
            "Photograph again raft R-2 (pond P0, berth 3) by 2027-03-11. Held: The photo is"
                + " blurred."),
        sentences(farm().held(2, 9, "the photo is blurred"), Action.PHOTOGRAPH_AGAIN));
  }

  @Test
  void aRaftWhosePhotosContradictEachOtherIsToBePhotographedAgainThoughItIsJudged() {
    assertEquals(
        List.of(
            "Photograph again raft R-2 (pond P0, berth 3) by 2027-03-11. Two photos contradict each"
                + " other."),
        sentences(
            farm().doubted(2, 9, "two photos contradict each other"), Action.PHOTOGRAPH_AGAIN));
  }

  @Test
  void farmThatStopsGrowingIsOneTaskForEachPondAndNoneForItsPlants() {
    List<Task> tasks = farm().stopsAfter(8).tasks(13, Action.INSPECT);
    assertEquals(List.of("P0", "P1"), tasks.stream().map(t -> t.where().pond()).toList());
    for (Task task : tasks) {
      assertEquals(1, task.priority());
      assertEquals("", task.where().raft());
      String why = task.why();
      assertTrue(why.contains(", all together, have all but stopped growing: "), why);
      assertTrue(
          why.endsWith(
              "Look at what its rafts share: pump and flow, water temperature, dissolved oxygen, EC"
                  + " and pH, light and air; a lamp or lens changed at the station looks much the"
                  + " same. Switch a pump off at the mains before you reach for it. Photos tell"
                  + " that growth departs, not why: measure before anything is changed; changes of"
                  + " feed or water treatment go to your agronomist."),
          why);
    }
  }

  @Test
  void heldSitesAreNamed() {
    SmallFarm farm =
        farm()
            .say(2, 9, SmallFarm.measure(SiteId.parse("A1"), 0, false, "a hose lies on it"))
            .say(2, 9, SmallFarm.measure(SiteId.parse("B1"), 0, false, "a hose lies on it"));
    assertEquals(
        List.of(
            "Photograph again raft R-2 (pond P0, berth 3), sites A1, B1 by 2027-03-11. Held: A hose"
                + " lies on it."),
        sentences(farm, Action.PHOTOGRAPH_AGAIN));
  }

  @Test
  void tagUnreadOnThreeEveningsIsToBeReplaced() {
    SmallFarm twice = farm().unread(4, 8).unread(4, 9);
    assertEquals(List.of(), sentences(twice, Action.REPLACE_TAG));
    assertEquals(
        List.of(
            "Replace the tag of raft R-4 (pond P0, berth 5). It was not read on the last three"
                + " evenings. Clean it, free it of leaves, or print a new one."),
        sentences(twice.unread(4, 7), Action.REPLACE_TAG));
    assertEquals(
        List.of(), sentences(farm().unread(4, 6).unread(4, 7).unread(4, 8), Action.REPLACE_TAG));
  }

  @Test
  void deadAndEmptySitesAreInspectedInTheirOrder() {
    SmallFarm farm = farm().say(1, 9, SmallFarm.measure(SiteId.parse("A2"), 1, false, ""));
    for (int day = 0; day <= 9; day++) {
      farm.say(0, day, SmallFarm.measure(SiteId.parse("B1"), 0, false, ""));
    }
    List<Task> tasks = farm.worklist(9);
    assertEquals(
        List.of(
            "Inspect raft R-1 (pond P1, berth 2), site A2 by 2027-03-11. It has lost the leaf seen"
                + " before, or it is brown.",
            "Inspect raft R-0 (pond P0, berth 1), site B1 by 2027-03-11. It is planted, but no leaf"
                + " shows."),
        tasks.stream().map(Task::sentence).toList());
    assertEquals(List.of(2, 3), tasks.stream().map(Task::priority).toList());
  }

  @Test
  void rowThatWasSeenStaysAwayAndASiteThatJoinsShowsAlone() {
    String seen = "item,until\ninspect-lagging/R-1/2027-03-01/A1,\n";
    SmallFarm one = farm().share(1, "A1", 0.5).file("seen.csv", seen);
    assertEquals(List.of(), one.tasks(9, Action.INSPECT));
    List<Task> two = one.share(1, "B3", 0.5).tasks(9, Action.INSPECT);
    assertEquals(
        List.of("inspect-lagging/R-1/2027-03-01/B3"), two.stream().map(Task::item).toList());
  }

  @Test
  void hiddenRowsAreCountedWithTheirDaysAndASiteOfARowAlone() {
    String seen = "item,until\ninspect-lagging/R-1/2027-03-01/A1,2027-03-15\n";
    SmallFarm two =
        farm()
            .share(1, "A1", 0.5)
            .share(1, "B3", 0.5)
            .missed(3, 9)
            .file("seen.csv", seen + "photograph/R-3/2027-03-10,\n");
    List<HiddenRow> hidden = two.close(9, 9).hidden();
    assertEquals(
        List.of(
            new HiddenRow("photograph/R-3/2027-03-10", Optional.empty()),
            new HiddenRow(
                "inspect-lagging/R-1/2027-03-01/A1", Optional.of(LocalDate.of(2027, 3, 15)))),
        hidden);
    assertEquals(
        "2 rows are hidden: 1 for good (seen or done), 1 put off until 2027-03-15",
        HiddenRow.words(hidden, LocalDate::toString));
    assertEquals("", HiddenRow.words(farm().close(9, 9).hidden(), LocalDate::toString));
  }

  @Test
  void rowPutOffShowsAgainOnItsDay() {
    String item = "inspect-lagging/R-1/2027-03-01/A1";
    // The worklist of the evening of 03-10 is the work of 03-11.
    SmallFarm later =
        farm().share(1, "A1", 0.5).file("seen.csv", "item,until\n" + item + ",2027-03-12\n");
    assertEquals(List.of(), later.tasks(9, Action.INSPECT));
    SmallFarm due =
        farm().share(1, "A1", 0.5).file("seen.csv", "item,until\n" + item + ",2027-03-11\n");
    assertEquals(1, due.tasks(9, Action.INSPECT).size());
  }

  @Test
  void rowOfEachEveningIsPutOffUntilItsDayAndDoneForThatEveningAlone() {
    String yesterday = "item,until\nphotograph/R-3/2027-03-09,";
    SmallFarm putOff = farm().missed(3, 9).file("seen.csv", yesterday + "2027-03-15\n");
    assertEquals(List.of(), putOff.tasks(9, Action.PHOTOGRAPH_AT_ALL));
    SmallFarm done = farm().missed(3, 9).file("seen.csv", yesterday + "\n");
    assertEquals(1, done.tasks(9, Action.PHOTOGRAPH_AT_ALL).size());
  }

  @Test
  void plannedHarvestIsAnnouncedAWeekAheadAndSaysWhenItIsPast() {
    assertEquals(
        List.of(
            "Harvest raft R-0 (pond P0, berth 1) by 2027-03-13. The planned harvest day of its small."),
        sentences(farm().harvestBy(SmallFarm.day(12)), Action.HARVEST));
    // The evening of day 9: two days after tomorrow it is urgent, after seven not yet said.
    assertEquals(
        List.of(2, 3, 3),
        List.of(12, 13, 16).stream()
            .map(day -> farm().harvestBy(SmallFarm.day(day)).tasks(9, Action.HARVEST).get(0))
            .map(Task::priority)
            .toList());
    assertEquals(List.of(), sentences(farm().harvestBy(SmallFarm.day(17)), Action.HARVEST));
    assertEquals(
        List.of(
            "Harvest raft R-0 (pond P0, berth 1) by 2027-03-09. The planned harvest day of its small; the day is"
                + " past."),
        sentences(farm().harvestBy(SmallFarm.day(8)), Action.HARVEST));
  }

  @Test
  void endOfTheCropsWindowAsksForTheHarvestOfEveryRaft() {
    List<Task> tasks = farm().harvest(WINDOW + "[8, 11]").tasks(9, Action.HARVEST);
    assertEquals(8, tasks.size());
    // Transplanted on 2027-03-01, window to day 11.
    assertEquals(SmallFarm.day(11), tasks.get(0).by().orElseThrow());
  }

  @Test
  void crowdedRaftIsRespacedUnlessItsHarvestIsNear() {
    SmallFarm farm = crowded(farm());
    assertEquals(
        List.of(
            "Re-space raft R-5 (pond P1, berth 6). 3 of 6 plants have grown into their neighbours."
                + " Their areas are lower bounds from now on."),
        sentences(farm, Action.RE_SPACE));
    assertEquals(
        List.of(), sentences(crowded(farm()).harvest(WINDOW + "[9, 30]"), Action.RE_SPACE));
  }

  private static SmallFarm crowded(SmallFarm farm) {
    for (String site : List.of("A1", "A2", "A3")) {
      farm.say(5, 9, SmallFarm.measure(SiteId.parse(site), 26, true, ""));
    }
    return farm;
  }

  @Test
  void cropWithFewWeighingsAsksForASmallAMiddlingAndALargePlant() {
    SmallFarm farm =
        farm()
            .harvest(WINDOW + "[14, 30]")
            .file(
                "weighings.csv",
                "raft,site,weighed_at,fresh_weight_g\nR-1,A2,2027-03-09T09:00,20\n");
    List<Task> tasks = farm.tasks(9, Action.WEIGH);
    assertEquals(1, tasks.size(), "one raft of the crop");
    assertEquals(3, tasks.get(0).where().sites().size());
    assertTrue(
        tasks
            .get(0)
            .why()
            .startsWith("Crop small has 1 weighing yet; weights can be told from 8 on."),
        tasks.get(0).why());
    // 0.6 of day 20 is day 12: too young on day 9.
    assertEquals(List.of(), farm().harvest(WINDOW + "[20, 30]").tasks(9, Action.WEIGH));
  }

  @Test
  void weighingNamesWhichPlantIsWhichAndComesNoLaterThanTheHarvest() {
    SmallFarm farm =
        farm()
            .harvest(WINDOW + "[14, 30]")
            .share(0, "B2", 0.5)
            .share(0, "A3", 2)
            .harvestBy(SmallFarm.day(11));
    Task task = farm.tasks(9, Action.WEIGH).get(0);
    List<String> sites = task.where().sites().stream().map(SiteId::toString).toList();
    assertEquals("B2", sites.get(0));
    assertEquals("A3", sites.get(2));
    assertTrue(
        task.why().contains("B2 is small, " + sites.get(1) + " is of middle size, A3 is large"),
        task.why());
    assertEquals(Optional.of(SmallFarm.day(11)), task.by());
    assertTrue(task.why().endsWith(" Weigh them before the raft is harvested."), task.why());
    String later = WeighTask.how(Optional.of(SmallFarm.day(20)), SmallFarm.day(9));
    assertTrue(later.endsWith("as sold)."), later);
    // Within a week where the harvest is later, or unknown.
    assertEquals(SmallFarm.day(16), WeighTask.by(Optional.empty(), SmallFarm.day(9)));
    assertEquals(SmallFarm.day(16), WeighTask.by(Optional.of(SmallFarm.day(20)), SmallFarm.day(9)));
    assertEquals(SmallFarm.day(10), WeighTask.by(Optional.of(SmallFarm.day(8)), SmallFarm.day(9)));
  }

  @Test
  void raftNotSeenSinceNamesWhatWasAmissOnItThen() {
    SmallFarm farm = farm().share(3, "A1", 0.5).missed(3, 9).missed(4, 9);
    for (int day = 0; day <= 8; day++) {
      farm.say(3, day, SmallFarm.measure(SiteId.parse("B1"), 0, false, ""));
    }
    assertEquals(
        List.of(
            "Expected, not seen. Last seen on 2027-03-09.",
            "Expected, not seen. Last seen on 2027-03-09; look at what was amiss then: empty B1;"
                + " lagging A1."),
        farm.tasks(9, Action.PHOTOGRAPH_AT_ALL).stream().map(Task::why).sorted().toList());
  }

  @Test
  void whatMayBeThePlugIsLookedAtAndNotPhotographedAgain() {
    String why = "leaf and " + RaftMeasure.PLUG + " look alike; look at it";
    SmallFarm farm = farm().say(2, 9, SmallFarm.measure(SiteId.parse("A1"), 0, false, why));
    assertEquals(List.of(), sentences(farm, Action.PHOTOGRAPH_AGAIN));
    assertEquals(
        List.of(
            "Inspect raft R-2 (pond P0, berth 3), site A1 by 2027-03-11. Held: Leaf and the plug of"
                + " its hole look alike; look at it."),
        sentences(farm, Action.INSPECT));
    assertEquals(
        List.of("inspect-held/R-2/2027-03-10"),
        farm.tasks(9, Action.INSPECT).stream().map(Task::item).toList());
  }

  @Test
  void aMisspeltCropIsMendedInTheBookAndNotPhotographedAgain() {
    SmallFarm farm = farm().planted(2, "smal");
    for (int i = 0; i < 6; i++) {
      SiteId site = new SiteId(i / 3, i % 3);
      farm.say(2, 9, SmallFarm.measure(site, 20, false, RaftMeasure.NO_CROP));
    }
    assertEquals(List.of(), sentences(farm, Action.PHOTOGRAPH_AGAIN));
    assertEquals(
        List.of(
            "Mend the book for raft R-2 (pond P0, berth 3) by 2027-03-11. Its photo is good, but the"
                + " crop of its planting cannot be used: plantings.csv:4: column crop: \"smal\" is"
                + " unknown; did you mean \"small\"? known: small. Mend that and run again."),
        sentences(farm, Action.MEND_THE_BOOK));
  }

  @Test
  void photographsComeBeforeInspections() {
    SmallFarm farm = farm().share(1, "A1", 0.5).missed(3, 9).held(2, 9, "blurred");
    assertEquals(
        List.of(Action.PHOTOGRAPH_AT_ALL, Action.PHOTOGRAPH_AGAIN, Action.INSPECT),
        farm.worklist(9).stream().map(Task::action).toList());
  }

  @Test
  void stepOfAStationIsItsCheckAndNoPlantIsBlamed() {
    SmallFarm farm = farm();
    for (int raft = 1; raft < 8; raft += 2) {
      for (int i = 0; i < 6; i++) {
        String site = new SiteId(i / 3, i % 3).toString();
        double area = 8 * Math.exp(SmallFarm.RATE * 9.75) * 0.8;
        farm.say(raft, 9, SmallFarm.measure(SiteId.parse(site), area, false, ""));
      }
    }
    List<Task> tasks = farm.worklist(9);
    assertEquals(Action.CHECK_THE_STATION, tasks.get(0).action());
    assertEquals("station/bench-1/2027-03-10", tasks.get(0).item());
    assertEquals(
        List.of(),
        tasks.stream().filter(t -> t.action() == Action.INSPECT).map(Task::sentence).toList());
  }
}
