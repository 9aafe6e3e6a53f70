// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.io.IOException;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.forecast.Amount;
import org.raftgauge.core.forecast.Asked;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.forecast.ForecastEvening;
import org.raftgauge.core.forecast.ForecastRule;
import org.raftgauge.core.forecast.RaftForecast;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.GraderResult;

/** Forecasts of simulated seasons against their truth. */
final class HarvestScore {
  /** Days ahead within which a ready day is told. */
  static final int HORIZON = 28;

  final List<Double> errors = new ArrayList<>();
  final ErrorBudget budget = new ErrorBudget();
  final List<Double> signed = new ArrayList<>();
  final List<Double> readyOff = new ArrayList<>();
  final List<Double> oracleOff = new ArrayList<>();
  final List<Double> seasonInside80 = new ArrayList<>();
  int rafts;
  int inside80;
  int inside95;
  int cropInside80;
  int readyInside80;
  int readyUntold;
  int seasons;
  int noGrader;
  double width80;
  double bias;

  /** Simulates and scores seasons. */
  static HarvestScore of(SeasonSetting setting, int seasons, long seed, Path scratch)
      throws IOException {
    HarvestScore score = new HarvestScore();
    for (int i = 0; i < seasons; i++) {
      score.season(new Season(setting, seed + i), scratch.resolve("season-" + i));
    }
    return score;
  }

  /** Returns the 10th to 90th percentile of the errors: the width that an 80 % interval needs. */
  double needed() {
    return quantile(signed, 0.9) - quantile(signed, 0.1);
  }

  /** Returns the share of rafts whose ready day came within so many days of the one told. */
  static double within(List<Double> off, double days) {
    return off.stream().filter(d -> d <= days).count() / (double) off.size();
  }

  void season(Season season, Path folder) throws IOException {
    CropBook book = SeasonBook.of(season, SeasonPlace.UNSEEN, folder);
    GraderResult grader = SeasonGrader.fit(season, book);
    if (!(grader instanceof Grader fitted)) {
      noGrader++;
      return;
    }
    int dat = SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD;
    Asked asked = new Asked(Season.TONIGHTS.plusDays(dat), ForecastRule.defaults());
    EveningForecast forecast =
        ForecastEvening.of(book, season.looks, Map.of("batavia", fitted), asked);
    Map<String, List<Plant>> rafts = new TreeMap<>();
    season.now.forEach(p -> rafts.computeIfAbsent(p.raft, r -> new ArrayList<>()).add(p));
    int before = inside80;
    int count = this.rafts;
    double all = 0;
    for (RaftForecast raft : forecast.rafts()) {
      all += raft(season, rafts.get(raft.who().raft()), raft);
    }
    seasonInside80.add((inside80 - before) / (double) Math.max(1, this.rafts - count));
    double total = all;
    seasons++;
    cropInside80 +=
        forecast.rows().stream()
                .filter(r -> r.scope().equals("crop"))
                .filter(
                    r -> ChronoUnit.DAYS.between(asked.evening(), r.date()) == SeasonSetting.LEAD)
                .anyMatch(r -> r.weightG().filter(w -> w.holds80(total)).isPresent())
            ? 1
            : 0;
  }

  private double raft(Season season, List<Plant> plants, RaftForecast raft) {
    int dat = SeasonSetting.HARVEST_DAT;
    double truth =
        plants.stream().filter(p -> p.standsOn(dat)).mapToDouble(p -> season.weightG(p, dat)).sum();
    Amount told = raft.weightG(SeasonSetting.LEAD).orElseThrow();
    double error = told.mean() / truth - 1;
    rafts++;
    errors.add(Math.abs(error));
    signed.add(error);
    bias += error;
    inside80 += told.holds80(truth) ? 1 : 0;
    inside95 += told.holds95(truth) ? 1 : 0;
    width80 += (told.hi80() - told.lo80()) / told.mean();
    budget.add(season, plants, raft, truth);
    ready(season, plants, raft);
    return truth;
  }

  private void ready(Season season, List<Plant> plants, RaftForecast raft) {
    int day = trueReadyDay(season, plants);
    OptionalInt told = raft.readyDay(0.5);
    int lo = raft.readyDay(0.1).orElse(HORIZON);
    int hi = raft.readyDay(0.9).orElse(HORIZON);
    readyUntold += told.isPresent() ? 0 : 1;
    readyOff.add((double) Math.abs(told.orElse(HORIZON) - day));
    oracleOff.add((double) Math.abs(ReadyOracle.day(season, plants, HORIZON) - day));
    readyInside80 += day >= lo && day <= hi ? 1 : 0;
  }

  /** Returns on which day from tonight a raft is ready, at most the horizon. */
  static int trueReadyDay(Season season, List<Plant> plants) {
    int evening = SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD;
    int day = 0;
    while (day < HORIZON && !isReady(season, plants, evening + day)) {
      day++;
    }
    return day;
  }

  private static boolean isReady(Season season, List<Plant> plants, int dat) {
    List<Plant> standing = plants.stream().filter(p -> p.standsOn(dat)).toList();
    long over = standing.stream().filter(p -> season.weightG(p, dat) >= season.minimumG).count();
    return over >= 0.9 * standing.size();
  }

  /** Returns a quantile of values. */
  static double quantile(List<Double> values, double probability) {
    List<Double> sorted = values.stream().sorted().toList();
    return sorted.get((int) Math.floor(probability * (sorted.size() - 1)));
  }
}
