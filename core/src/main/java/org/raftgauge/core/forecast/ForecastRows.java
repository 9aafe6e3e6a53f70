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

/** Makes the rows of rafts, ponds and crops. */
final class ForecastRows {
  private final Asked asked;

  ForecastRows(Asked asked) {
    this.asked = asked;
  }

  List<ForecastRow> of(List<RaftForecast> rafts) {
    List<ForecastRow> rows = new ArrayList<>();
    for (RaftForecast raft : rafts) {
      for (int d = 0; d <= asked.rule().days(); d++) {
        rows.add(raft(raft, d));
      }
    }
    Map<List<String>, List<RaftForecast>> ponds = new TreeMap<>(ForecastRows::compare);
    Map<List<String>, List<RaftForecast>> crops = new TreeMap<>(ForecastRows::compare);
    for (RaftForecast raft : rafts) {
      RaftForecast.Who who = raft.who();
      ponds.computeIfAbsent(List.of(who.pond(), who.crop()), k -> new ArrayList<>()).add(raft);
      crops.computeIfAbsent(List.of("", who.crop()), k -> new ArrayList<>()).add(raft);
    }
    ponds.forEach((key, of) -> rows.addAll(group("pond", key, of)));
    crops.forEach((key, of) -> rows.addAll(group("crop", key, of)));
    return rows;
  }

  private static int compare(List<String> a, List<String> b) {
    int first = a.get(0).compareTo(b.get(0));
    return first != 0 ? first : a.get(1).compareTo(b.get(1));
  }

  private ForecastRow raft(RaftForecast raft, int d) {
    RaftForecast.Who who = raft.who();
    RaftForecast.Day day = raft.day(d);
    Optional<Amount> weight = raft.weightG(d);
    return new ForecastRow(
        "raft",
        new ForecastRow.Place(who.raft(), who.pond(), who.crop(), who.lot()),
        asked.evening().plusDays(d),
        OptionalDouble.of(who.ageDays() + d),
        day.heads(),
        day.headsUnder().map(OptionalDouble::of).orElse(OptionalDouble.empty()),
        weight,
        ready(raft),
        new ForecastRow.Told(who.grader(), day.regime()),
        day.areaCm2(),
        weight.flatMap(w -> who.harvest().map(h -> sales(w.mean(), h, who.cutBeforeG()))),
        day.warnings());
  }

  private ForecastRow.Ready ready(RaftForecast raft) {
    return new ForecastRow.Ready(
        date(raft.readyDay(0.5)), date(raft.readyDay(0.1)), date(raft.readyDay(0.9)));
  }

  private Optional<LocalDate> date(OptionalInt day) {
    return day.isPresent()
        ? Optional.of(asked.evening().plusDays(day.getAsInt()))
        : Optional.empty();
  }

  private List<ForecastRow> group(String scope, List<String> key, List<RaftForecast> rafts) {
    List<ForecastRow> rows = new ArrayList<>();
    for (int d = 0; d <= asked.rule().days(); d++) {
      rows.add(group(scope, new ForecastRow.Place("", key.get(0), key.get(1), ""), rafts, d));
    }
    return rows;
  }

  private ForecastRow group(
      String scope, ForecastRow.Place place, List<RaftForecast> rafts, int d) {
    double heads = 0;
    double under = 0;
    boolean weighed = true;
    boolean targets = true;
    double before = 0;
    Totals total = Totals.zero(asked.rule().draws());
    List<Amount> areas = new ArrayList<>();
    TreeSet<String> regimes = new TreeSet<>();
    TreeSet<String> graders = new TreeSet<>();
    TreeMap<String, Integer> warnings = new TreeMap<>();
    for (RaftForecast raft : rafts) {
      RaftForecast.Day day = raft.day(d);
      heads += day.heads();
      under += day.headsUnder().orElse(0.0);
      targets &= day.headsUnder().isPresent();
      weighed &= day.weight().isPresent();
      total = day.weight().map(total::plus).orElse(total);
      before += raft.who().cutBeforeG();
      areas.add(day.areaCm2());
      regimes.add(day.regime());
      graders.add(raft.who().grader());
      day.warnings().forEach(w -> warnings.merge(RaftForecast.general(w), 1, Integer::sum));
    }
    Optional<Amount> weight = weighed ? Optional.of(total.amount()) : Optional.empty();
    Optional<Harvest> harvest = rafts.get(0).who().harvest();
    double cutBefore = before;
    List<String> said = new ArrayList<>();
    warnings.forEach((w, n) -> said.add(n + " of " + rafts.size() + " rafts: " + w));
    return new ForecastRow(
        scope,
        place,
        asked.evening().plusDays(d),
        OptionalDouble.empty(),
        heads,
        targets && weighed ? OptionalDouble.of(under) : OptionalDouble.empty(),
        weight,
        ForecastRow.Ready.none(),
        new ForecastRow.Told(
            String.join("+", graders), regimes.size() > 1 ? "mixed" : regimes.first()),
        sum(areas),
        weight.flatMap(w -> harvest.map(h -> sales(w.mean(), h, cutBefore))),
        said);
  }

  /** Adds areas as if they erred together: weather and curve are most of their error. */
  private static Amount sum(List<Amount> areas) {
    return areas.stream()
        .reduce(
            new Amount(0, 0, 0, 0, 0),
            (a, b) ->
                new Amount(
                    a.mean() + b.mean(),
                    a.lo80() + b.lo80(),
                    a.hi80() + b.hi80(),
                    a.lo95() + b.lo95(),
                    a.hi95() + b.hi95()));
  }

  static ForecastRow.Sales sales(double weightG, Harvest harvest, double cutBeforeG) {
    double left = weightG * (1 - harvest.trimShare());
    OptionalDouble packs =
        harvest.packG().isPresent()
            ? OptionalDouble.of(Math.floor(left / harvest.packG().getAsDouble()))
            : OptionalDouble.empty();
    return new ForecastRow.Sales(left, packs, cutBeforeG);
  }
}
