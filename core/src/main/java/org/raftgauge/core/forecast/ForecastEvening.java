// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HarvestTotal;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.SiteLook;

/** Forecasts from an evening: a pure function that sees nothing later than it. */
public final class ForecastEvening {
  /** Rafts that a remark names; the others are counted. */
  private static final int MOST_NAMED = 12;

  private final CropBook book;
  private final Map<String, Grader> graders;
  private final Asked asked;
  private final SharedDraws draws;

  private ForecastEvening(CropBook book, Map<String, Grader> graders, Asked asked) {
    this.book = book;
    this.graders = graders;
    this.asked = asked;
    this.draws = new SharedDraws(asked.rule());
  }

  /**
   * Forecasts.
   *
   * @param book the crop book; what it says of later days is left out
   * @param looks what photos that count said, in any order; later ones are left out
   * @param graders by crop; a crop without one is told by area only
   * @param asked evening and rule
   * @return rafts, ponds and crops on the coming days, supply, and remarks
   */
  public static EveningForecast of(
      CropBook book, List<SiteLook> looks, Map<String, Grader> graders, Asked asked) {
    CropBook known = BookAsOf.of(book, asked.evening());
    List<PlantSeries> series = CollectSeries.upTo(known, looks, asked.evening());
    return new ForecastEvening(known, graders, asked).forecast(looks, series);
  }

  /**
   * Returns the first day of which photos are needed to forecast from an evening.
   *
   * @param book as known by the evening
   * @param evening the farm's day
   * @return that on which the oldest plant that stands was set out, or the oldest past cycle used
   */
  public static LocalDate firstDay(CropBook book, LocalDate evening) {
    return CycleStarts.firstDay(book, evening);
  }

  /**
   * Forecasts some rafts, for replays: only up to the last day asked for, so ready days are not
   * told.
   *
   * @param known the book as of the evening
   * @param looks what photos that count said; later ones are left out
   * @param graders by crop
   * @param some the evening, and what is wanted
   */
  static List<RaftForecast> of(
      CropBook known, List<SiteLook> looks, Map<String, Grader> graders, Some some) {
    List<PlantSeries> wanted =
        CollectSeries.upTo(known, looks, some.asked().evening()).stream()
            .filter(s -> some.cohorts().test(s.planting()))
            .toList();
    ForecastEvening forecast = new ForecastEvening(known, graders, some.asked());
    Outlooks outlooks = forecast.outlooks(looks, wanted, some.memory());
    List<Outlook> plants =
        outlooks.plants().stream().filter(p -> some.rafts().contains(p.planting().raft())).toList();
    return forecast.rafts(plants, outlooks.bare(), some.asked().rule().days());
  }

  /**
   * What is asked of which plants.
   *
   * @param asked evening and rule
   * @param cohorts whether a planting's plants belong to a cohort that is wanted
   * @param rafts to forecast
   * @param memory of past cycles, shared by replays of a book
   */
  record Some(
      Asked asked, Predicate<Planting> cohorts, Set<String> rafts, FinishedCycles.Memory memory) {}

  private EveningForecast forecast(List<SiteLook> looks, List<PlantSeries> series) {
    Outlooks outlooks = outlooks(looks, series, new FinishedCycles.Memory());
    List<RaftForecast> rafts = rafts(outlooks.plants(), outlooks.bare(), asked.rule().horizon());
    List<String> remarks = remarks(series, outlooks, rafts);
    return new EveningForecast(
        asked, rafts, new ForecastRows(asked).of(rafts), new Supply(asked).of(rafts), remarks);
  }

  private Outlooks outlooks(
      List<SiteLook> looks, List<PlantSeries> series, FinishedCycles.Memory memory) {
    Instant end = end();
    List<SiteLook> before =
        looks.stream().filter(l -> l.takenAt().toInstant().isBefore(end)).toList();
    FinishedCycles past = FinishedCycles.of(book, before, CohortRule.defaults(), memory);
    return Outlooks.of(book, series, new Outlooks.Past(past, graders), asked);
  }

  private List<RaftForecast> rafts(List<Outlook> plants, Set<String> bare, int horizon) {
    StandLoss loss = StandLoss.of(book.plants(), bare, end().minusNanos(1));
    DrawRaft.Shared shared = new DrawRaft.Shared(draws, loss, horizon);
    return grouped(plants).values().stream().map(own -> raft(own, shared)).toList();
  }

  private Instant end() {
    return book.farmDay().start(asked.evening().plusDays(1));
  }

  private static Map<String, List<Outlook>> grouped(List<Outlook> plants) {
    TreeMap<String, List<Outlook>> groups = new TreeMap<>();
    for (Outlook plant : plants) {
      Planting p = plant.planting();
      groups
          .computeIfAbsent(String.join("\n", p.raft(), p.crop(), p.lot()), k -> new ArrayList<>())
          .add(plant);
    }
    return groups;
  }

  private RaftForecast raft(List<Outlook> plants, DrawRaft.Shared shared) {
    Planting planting = plants.get(0).planting();
    Optional<Grader> grader = Optional.ofNullable(graders.get(planting.crop()));
    RaftForecast.Who who =
        new RaftForecast.Who(
            planting.raft(),
            planting.pond(),
            planting.crop(),
            planting.variety(),
            planting.lot(),
            plants.get(0).ageDays(),
            book.crop(planting).flatMap(Crop::harvest),
            grader.map(g -> g.crop() + " " + g.origin().fittedAt()).orElse("none").strip(),
            cutBefore(planting));
    return new DrawRaft(who, plants, grader.map(Weighing::new), shared).draw(shared.horizon());
  }

  /** Returns what was weighed at earlier cuts of a planting, g. */
  private double cutBefore(Planting planting) {
    Instant from = book.farmDay().start(planting.startsOn());
    return book.diary().harvests().stream()
        .filter(h -> h.raft().equals(planting.raft()))
        .filter(h -> h.harvestedAt().toInstant().isAfter(from))
        .mapToDouble(HarvestTotal::totalWeightG)
        .sum();
  }

  private List<String> remarks(
      List<PlantSeries> wanted, Outlooks outlooks, List<RaftForecast> rafts) {
    List<String> remarks = new ArrayList<>();
    remarks.add(EveningForecast.CAUTION);
    rafts.stream()
        .filter(r -> r.who().grader().equals("none"))
        .map(r -> r.who().crop())
        .distinct()
        .map(EveningForecast::noGrader)
        .forEach(remarks::add);
    remarks.addAll(noCurve(outlooks));
    List<String> trays =
        wanted.stream()
            .filter(p -> p.clock() == PlantSeries.AgeClock.SOWING)
            .map(p -> p.planting().raft())
            .distinct()
            .sorted()
            .toList();
    if (!trays.isEmpty()) {
      String verb = trays.size() == 1 ? " is" : " are";
      remarks.add(named(trays) + verb + " not transplanted yet: no forecast");
    }
    return remarks;
  }

  /** Says which rafts have no curve, those for the same reason together. */
  private static List<String> noCurve(Outlooks outlooks) {
    TreeMap<String, List<String>> reasons = new TreeMap<>();
    outlooks
        .noCurve()
        .forEach(
            (raft, why) ->
                reasons
                    .computeIfAbsent(
                        String.join("; of other plants on it: ", why), w -> new ArrayList<>())
                    .add(raft));
    List<String> remarks = new ArrayList<>();
    reasons.forEach(
        (why, rafts) -> {
          remarks.add(
              named(rafts) + (rafts.size() == 1 ? " has" : " have") + " no forecast: " + why);
        });
    return remarks;
  }

  private static String named(List<String> rafts) {
    int more = rafts.size() - MOST_NAMED;
    String first = String.join(", ", rafts.subList(0, Math.min(MOST_NAMED, rafts.size())));
    return first + (more > 0 ? " and " + more + " more" : "");
  }
}
