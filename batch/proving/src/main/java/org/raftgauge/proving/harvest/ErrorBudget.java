// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.forecast.RaftForecast;

/**
 * Where the error of raft totals comes from, of ln weight, by what is known of the simulation:
 * where plants stood tonight, how all grew from then on, how much of that was weather that nobody
 * can know, and the rest: the grader, the plants' own departures and deaths.
 */
final class ErrorBudget {
  private final List<Double> total = new ArrayList<>();
  private final List<Double> level = new ArrayList<>();
  private final List<Double> growth = new ArrayList<>();
  private final List<Double> weather = new ArrayList<>();
  private final List<Double> rest = new ArrayList<>();
  private final List<Double> floor = new ArrayList<>();

  void add(Season season, List<Plant> plants, RaftForecast raft, double truthG) {
    int from = SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD;
    int to = SeasonSetting.HARVEST_DAT;
    double all = Math.log(raft.weightG(SeasonSetting.LEAD).orElseThrow().mean() / truthG);
    double now = season.exponent * Math.log(raft.areaCm2(0).mean() / area(plants, from, from));
    double then =
        season.exponent * Math.log(raft.areaCm2(SeasonSetting.LEAD).mean() / area(plants, to, from))
            + season.exponent * SeasonSetting.LEAD * season.setting.lostPerDay();
    double unknowable =
        season.exponent
            * (season.climate.expectedGrowth(from, to)
                - season.climate.lnArea(to)
                + season.climate.lnArea(from));
    total.add(all);
    level.add(now);
    growth.add(then - now);
    weather.add(unknowable);
    rest.add(all - then);
    floor.add(unknowable + all - then);
  }

  /** Returns the sum over the plants that stand on a day of their areas on another. */
  private static double area(List<Plant> plants, int dat, int standing) {
    return plants.stream()
        .filter(p -> p.standsOn(standing))
        .mapToDouble(p -> Math.exp(p.lnArea[dat]))
        .sum();
  }

  /** Returns name and numbers of each part. */
  List<List<String>> rows() {
    return List.of(
        row("all", total),
        row("where plants stood tonight", level),
        row("growth from then on", growth),
        row("of it weather to come: unknowable", weather),
        row("grader, single plants, deaths", rest),
        row("growth known but for weather to come: the least that can be", floor));
  }

  private static List<String> row(String name, List<Double> values) {
    double mean = values.stream().mapToDouble(v -> v).average().orElse(0);
    double squares = values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
    List<Double> absolute = values.stream().map(Math::abs).toList();
    return List.of(
        name,
        percent("%+.1f %%", mean),
        percent("%.1f %%", Math.sqrt(squares / Math.max(1, values.size() - 1))),
        percent("%.1f %%", HarvestScore.quantile(absolute, 0.5)));
  }

  private static String percent(String format, double share) {
    return String.format(Locale.ROOT, format, 100 * share);
  }
}
