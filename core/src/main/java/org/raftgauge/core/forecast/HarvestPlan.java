// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.TreeSet;
import org.raftgauge.core.book.Harvest;

/** Proposes which raft is harvested when, and adds up what a plan yields. */
public final class HarvestPlan {
  private final EveningForecast forecast;
  private final Map<String, LocalDate> planned = new TreeMap<>();

  private HarvestPlan(EveningForecast forecast, List<PlanRow> plan) {
    this.forecast = forecast;
    plan.forEach(row -> row.harvestOn().ifPresent(day -> planned.put(row.raft(), day)));
  }

  /**
   * Proposes: each raft on its ready day, or tomorrow where it is ready already.
   *
   * @param forecast of the evening
   * @return a row for each raft that has a forecast, sorted by raft; without a day where none of
   *     the coming days of the tables finds it ready
   */
  public static List<PlanRow> propose(EveningForecast forecast) {
    Map<String, Optional<LocalDate>> rows = new TreeMap<>();
    for (RaftForecast raft : forecast.rafts()) {
      OptionalInt ready = raft.readyDay(0.5);
      Optional<LocalDate> day =
          ready.isPresent() && ready.getAsInt() <= forecast.asked().rule().days()
              ? Optional.of(forecast.date(Math.max(1, ready.getAsInt())))
              : Optional.empty();
      rows.merge(raft.who().raft(), day, HarvestPlan::later);
    }
    return rows.entrySet().stream().map(e -> new PlanRow(e.getKey(), e.getValue())).toList();
  }

  /** Returns the day on which both parts of a raft are ready. */
  private static Optional<LocalDate> later(Optional<LocalDate> a, Optional<LocalDate> b) {
    return a.flatMap(x -> b.map(y -> x.isAfter(y) ? x : y));
  }

  /**
   * Says that a plan's raft has no forecast.
   *
   * @param forecast of the evening
   * @param row of the plan
   * @return in words, or nothing
   */
  public static Optional<String> wrongRaft(EveningForecast forecast, PlanRow row) {
    return forecast.rafts().stream().anyMatch(r -> r.who().raft().equals(row.raft()))
        ? Optional.empty()
        : Optional.of("raft \"" + row.raft() + "\" has no forecast");
  }

  /**
   * Says that a plan's day is not one of the forecast.
   *
   * @param forecast of the evening
   * @param row of the plan
   * @return in words, or nothing
   */
  public static Optional<String> wrongDay(EveningForecast forecast, PlanRow row) {
    LocalDate first = forecast.date(0);
    LocalDate last = forecast.date(forecast.asked().rule().days());
    return row.harvestOn()
        .filter(day -> day.isBefore(first) || day.isAfter(last))
        .map(day -> day + " is not among the days forecast, " + first + " to " + last);
  }

  /**
   * Adds up.
   *
   * @param forecast of the evening
   * @param plan which raft on which day
   * @return each crop's days from the evening on; crops without weights are left out
   */
  public static List<PlanDay> totals(EveningForecast forecast, List<PlanRow> plan) {
    HarvestPlan of = new HarvestPlan(forecast, plan);
    TreeMap<String, List<RaftForecast>> crops = new TreeMap<>();
    for (RaftForecast raft : forecast.rafts()) {
      if (raft.weightG(forecast.asked().rule().days()).isPresent()) {
        crops.computeIfAbsent(raft.who().crop(), c -> new ArrayList<>()).add(raft);
      }
    }
    List<PlanDay> days = new ArrayList<>();
    crops.forEach((crop, rafts) -> days.addAll(of.crop(crop, rafts)));
    return days;
  }

  private List<PlanDay> crop(String crop, List<RaftForecast> rafts) {
    List<PlanDay> days = new ArrayList<>();
    double left = 0;
    for (int d = 0; d <= forecast.asked().rule().days(); d++) {
      PlanDay day = day(crop, rafts, d, left);
      left = day.leftG();
      days.add(day);
    }
    return days;
  }

  private PlanDay day(String crop, List<RaftForecast> rafts, int d, double before) {
    LocalDate date = forecast.date(d);
    Totals total = Totals.zero(forecast.asked().rule().draws());
    TreeSet<String> cut = new TreeSet<>();
    TreeSet<String> waiting = new TreeSet<>();
    TreeSet<String> warnings = new TreeSet<>();
    double heads = 0;
    double sales = 0;
    double waitingG = 0;
    for (RaftForecast raft : rafts) {
      Optional<LocalDate> on = Optional.ofNullable(planned.get(raft.who().raft()));
      double mean = raft.weightG(d).orElseThrow().mean();
      OptionalInt ready = raft.readyDay(0.5);
      boolean isReady = ready.isPresent() && ready.getAsInt() <= d;
      if (on.filter(date::equals).isPresent()) {
        cut.add(raft.who().raft());
        total = total.plus(raft.day(d).weight().orElseThrow());
        heads += raft.heads(d);
        sales += mean * (1 - raft.who().harvest().map(Harvest::trimShare).orElse(0.0));
        raft.day(d).warnings().forEach(w -> warnings.add(raft.who().raft() + ": " + w));
        if (!isReady) {
          warnings.add(raft.who().raft() + ": not ready by then, more likely than not");
        }
      } else if (isReady && on.map(day -> day.isAfter(date)).orElse(true)) {
        waiting.add(raft.who().raft());
        waitingG += mean;
      }
    }
    OptionalDouble pack =
        rafts.get(0).who().harvest().map(Harvest::packG).orElse(OptionalDouble.empty());
    double packs = pack.isPresent() ? Math.floor((before + sales) / pack.getAsDouble()) : 0;
    return new PlanDay(
        crop,
        date,
        List.copyOf(cut),
        heads,
        total.amount(),
        sales,
        pack.isPresent() ? OptionalDouble.of(packs) : pack,
        pack.isPresent() ? before + sales - packs * pack.getAsDouble() : 0,
        List.copyOf(waiting),
        waitingG,
        List.copyOf(warnings));
  }
}
