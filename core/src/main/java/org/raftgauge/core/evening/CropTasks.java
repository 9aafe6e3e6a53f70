// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.Harvest;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.evening.Task.Action;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;

/** Finds what the crops' own calendar asks for: harvests, room, plants to weigh. */
final class CropTasks {
  /** Days ahead of which a harvest is urgent; a working value. */
  private static final int AHEAD_DAYS = 2;

  /** Days ahead of which a harvest is announced: the week that the worklist covers. */
  private static final int WEEK_DAYS = 7;

  /** Share of closed sites from which a raft is crowded; a working value. */
  private static final double CROWDED = 0.5;

  /** Weighings without which no weight is estimated (design, section 5). */
  private static final int FEWEST_WEIGHINGS = 8;

  private final Tonight tonight;
  private final SeenItems seen;

  CropTasks(Tonight tonight, SeenItems seen) {
    this.tonight = tonight;
    this.seen = seen;
  }

  private Optional<Harvest> harvest(Planting planting) {
    return tonight.book().crop(planting).flatMap(Crop::harvest);
  }

  /** Rafts whose harvest is due, by plan or by the crop's window. */
  List<Task> harvests() {
    List<Task> tasks = new ArrayList<>();
    for (String raft : tonight.book().expectedRafts(tonight.evening())) {
      Optional<Planting> planting = tonight.planting(raft);
      Optional<LocalDate> by = planting.flatMap(this::harvestBy);
      String item = Item.ofRaft("harvest", raft, tonight.cycle(raft));
      boolean due = by.filter(d -> !d.isAfter(tonight.evening().plusDays(WEEK_DAYS))).isPresent();
      if (due && !seen.hides(item)) {
        boolean planned = planting.orElseThrow().harvestBy().isPresent();
        String crops = crops(raft);
        String why =
            planned
                ? "The planned harvest day of its " + crops
                : "The harvest window of its " + crops + " ends";
        String late = by.get().isBefore(tonight.tomorrow()) ? "; the day is past." : ".";
        int priority = by.get().isAfter(tonight.tomorrow().plusDays(AHEAD_DAYS)) ? 3 : 2;
        tasks.add(new Task(Action.HARVEST, priority, tonight.whole(raft), why + late, by, item));
      }
    }
    return tasks;
  }

  /** Names what grows on a raft. */
  private String crops(String raft) {
    return tonight.book().plantingsOn(raft, tonight.evening()).stream()
        .map(p -> (p.crop() + " " + p.variety()).trim())
        .distinct()
        .collect(Collectors.joining(" and "));
  }

  private Optional<LocalDate> harvestBy(Planting planting) {
    return planting
        .harvestBy()
        .or(
            () ->
                harvest(planting)
                    .flatMap(
                        h ->
                            planting
                                .transplantedOn()
                                .map(day -> day.plusDays((long) Math.floor(h.windowToDat())))));
  }

  /** Rafts on which many sites are closed long before the harvest. */
  List<Task> crowded() {
    List<Task> tasks = new ArrayList<>();
    byRaft(tonight.seenTonight())
        .forEach(
            (raft, plants) -> {
              List<PlantSeries> measured = plants.stream().filter(p -> p.last().hasArea()).toList();
              long closed = measured.stream().filter(p -> p.last().measure().closed()).count();
              String item = Item.ofRaft("re-space", raft, tonight.cycle(raft));
              boolean crowded = !measured.isEmpty() && closed >= CROWDED * measured.size();
              if (crowded && !nearHarvest(plants.get(0)) && !seen.hides(item)) {
                String why =
                    closed
                        + " of "
                        + measured.size()
                        + " plants have grown into their neighbours. Their areas are lower bounds"
                        + " from now on.";
                tasks.add(
                    new Task(Action.RE_SPACE, 3, tonight.whole(raft), why, Optional.empty(), item));
              }
            });
    return tasks;
  }

  private boolean nearHarvest(PlantSeries plant) {
    Optional<LocalDate> by = plant.planting().harvestBy();
    boolean planned = by.filter(d -> !d.isAfter(tonight.evening().plusDays(7))).isPresent();
    boolean inWindow =
        harvest(plant.planting())
            .filter(h -> plant.last().ageDays() >= h.windowFromDat())
            .isPresent();
    return planned || inWindow;
  }

  private static Map<String, List<PlantSeries>> byRaft(List<PlantSeries> plants) {
    Map<String, List<PlantSeries>> rafts = new TreeMap<>();
    plants.forEach(p -> rafts.computeIfAbsent(p.last().raft(), r -> new ArrayList<>()).add(p));
    return rafts;
  }

  /** One raft of each crop that has a harvest weight and too few weighings. */
  List<Task> weighings() {
    Map<String, List<PlantSeries>> crops = new TreeMap<>();
    for (PlantSeries plant : tonight.seenTonight()) {
      boolean grown =
          harvest(plant.planting())
              .filter(h -> plant.last().ageDays() >= 0.6 * h.windowFromDat())
              .isPresent();
      if (grown && plant.last().hasArea()) {
        crops.computeIfAbsent(plant.planting().crop(), c -> new ArrayList<>()).add(plant);
      }
    }
    List<Task> tasks = new ArrayList<>();
    crops.forEach((crop, plants) -> weigh(crop, plants).ifPresent(tasks::add));
    return tasks;
  }

  private Optional<Task> weigh(String crop, List<PlantSeries> plants) {
    long weighed = weighed(crop);
    String raft = oldest(plants);
    WeighTask chosen =
        WeighTask.of(plants.stream().filter(p -> p.last().raft().equals(raft)).toList());
    String item = Item.ofRaft("weigh-" + crop, raft, tonight.cycle(raft));
    if (weighed >= FEWEST_WEIGHINGS || seen.hides(item)) {
      return Optional.empty();
    }
    Optional<LocalDate> harvestBy = tonight.planting(raft).flatMap(this::harvestBy);
    String why =
        "Crop "
            + crop
            + " has "
            + (weighed == 0 ? "no" : String.valueOf(weighed))
            + (weighed == 1 ? " weighing" : " weighings")
            + " yet; weights can be told from "
            + FEWEST_WEIGHINGS
            + " on. "
            + chosen.words()
            + " "
            + WeighTask.how(harvestBy, tonight.evening());
    return Optional.of(
        new Task(
            Action.WEIGH,
            3,
            tonight.at(raft, chosen.sites()),
            why,
            Optional.of(WeighTask.by(harvestBy, tonight.evening())),
            item));
  }

  private long weighed(String crop) {
    return tonight.book().diary().weighings().stream()
        .filter(
            w ->
                tonight.book().plantingsOn(w.raft(), evening(w.weighedAt().toInstant())).stream()
                    .anyMatch(p -> p.crop().equals(crop)))
        .count();
  }

  private LocalDate evening(Instant at) {
    return tonight.book().farmDay().evening(at);
  }

  private static String oldest(List<PlantSeries> plants) {
    return plants.stream()
        .map(PlantSeries::last)
        .max(
            Comparator.comparingDouble(Sight::ageDays)
                .thenComparing(Sight::raft, Comparator.reverseOrder()))
        .map(Sight::raft)
        .orElseThrow();
  }
}
