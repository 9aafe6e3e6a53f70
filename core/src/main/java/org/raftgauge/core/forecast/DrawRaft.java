// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.raftgauge.core.book.Harvest;
import org.raftgauge.core.grader.RegimeFit;

/**
 * Draws a raft's weights and ready day. In each draw calibration, growth and weather are the same
 * for all plants; what is a plant's own (its weight about the grader's line, its curve's own error,
 * whether it stands) is summed analytically and drawn once for the raft, the same on all days.
 */
final class DrawRaft {
  private final List<Outlook> plants;
  private final Optional<Weighing> weighing;
  private final SharedDraws shared;
  private final StandLoss loss;
  private final RaftForecast.Who who;
  private final double[] own;

  /** The sums of a day over plants, by draw. */
  private final class Sums {
    private final double[] total = new double[shared.draws()];
    private final double[] under = new double[shared.draws()];
    private final List<HeadSpread.Head> heads = new ArrayList<>();
    private double ownVariance;
    private double shareVariance;
  }

  DrawRaft(RaftForecast.Who who, List<Outlook> plants, Optional<Weighing> weighing, Shared common) {
    this.who = who;
    this.plants = plants;
    this.weighing = weighing;
    this.shared = common.draws();
    this.loss = common.loss();
    this.own = shared.normals("raft " + who.raft() + "/" + who.crop() + "/" + who.lot());
  }

  /** What all rafts share. */
  record Shared(SharedDraws draws, StandLoss loss, int horizon) {}

  RaftForecast draw(int horizon) {
    int[] ready = new int[shared.draws()];
    Arrays.fill(ready, horizon + 1);
    List<RaftForecast.Day> days = new ArrayList<>();
    boolean weighed = true;
    for (int d = 0; d <= horizon; d++) {
      Optional<List<Weighing.Row>> rows = rows(d);
      weighed &= rows.isPresent();
      days.add(day(d, rows, ready));
    }
    boolean readiness = weighed && who.harvest().isPresent();
    return new RaftForecast(who, days, readiness ? ready : new int[0]);
  }

  private Optional<List<Weighing.Row>> rows(int day) {
    List<Weighing.Row> rows = new ArrayList<>(plants.size());
    for (Outlook plant : plants) {
      Optional<Weighing.Row> row = weighing.flatMap(w -> w.row(plant, day));
      if (row.isEmpty()) {
        return Optional.empty();
      }
      rows.add(row.get());
    }
    return Optional.of(rows);
  }

  private RaftForecast.Day day(int day, Optional<List<Weighing.Row>> rows, int[] ready) {
    double stands = loss.standing(who.crop(), day);
    double heads = stands * plants.size();
    Set<String> warnings = warnings(day, rows);
    if (rows.isEmpty() || plants.isEmpty()) {
      return new RaftForecast.Day(
          heads,
          Optional.empty(),
          Optional.empty(),
          HeadSpread.NONE,
          area(day, stands),
          regime(rows),
          List.copyOf(warnings));
    }
    Sums sums = new Sums();
    for (int i = 0; i < plants.size(); i++) {
      add(plants.get(i), rows.get().get(i), day, sums);
    }
    double totalSd = Math.sqrt(sums.ownVariance);
    double shareSd = Math.sqrt(sums.shareVariance) / plants.size();
    double readyUnder = readyUnder();
    for (int s = 0; s < shared.draws(); s++) {
      sums.total[s] = Math.max(0, sums.total[s] + totalSd * own[s]);
      double share = sums.under[s] / plants.size() - shareSd * own[s];
      if (share <= readyUnder && day < ready[s]) {
        ready[s] = day;
      }
    }
    return new RaftForecast.Day(
        heads,
        who.harvest().map(h -> stands * expected(sums)),
        Optional.of(Totals.of(sums.total)),
        new HeadSpread(sums.heads),
        area(day, stands),
        regime(rows),
        List.copyOf(warnings));
  }

  /**
   * Returns the share of heads under the minimum up to which the raft is ready: as many whole heads
   * as the crop allows, and half a one, for a count is taken for a smooth number.
   */
  private double readyUnder() {
    double allowed = 1 - who.harvest().map(Harvest::readyShare).orElse(1.0);
    return (Math.floor(allowed * plants.size() + 1e-9) + 0.5) / plants.size();
  }

  private double expected(Sums sums) {
    return Arrays.stream(sums.under).average().orElse(0);
  }

  private void add(Outlook plant, Weighing.Row row, int day, Sums sums) {
    RegimeFit fit = row.how.fit();
    double[] beta = fit.coefficients();
    double centre = Line.dot(row.design, beta) + row.how.offset();
    double[] beyond = shared.normals("beyond the weighings");
    SharedDraws.Calibration calibration = shared.calibration(fit);
    double[] curve = shared.normals("cohort " + plant.growth().number());
    double[] weather = shared.normals("weather");
    double slope = row.how.slope();
    double curveSd = slope * plant.curveSd(day);
    double weatherSd = slope * plant.growth().weatherSd().get(day);
    double ownSd = Math.hypot(slope * plant.days().get(day).ownSd(), row.how.heightSd());
    double residual = fit.numbers().residualSd();
    double factor = fit.numbers().smearing() * Math.exp(ownSd * ownSd / 2);
    double stands = loss.standing(who.crop(), day);
    double lnMinimum = Math.log(who.harvest().map(h -> h.minimumG()).orElse(0.0));
    double own2 = ownSd * ownSd;
    double residual2 = residual * residual;
    double middle = 0;
    for (int s = 0; s < shared.draws(); s++) {
      double ln =
          centre
              + Line.dot(row.design, calibration.shift[s])
              + curveSd * curve[s]
              + weatherSd * weather[s]
              + row.how.beyondSd() * beyond[s];
      sums.total[s] += stands * factor * Math.exp(ln);
      double share =
          NormalShare.below(
              (lnMinimum - ln) / Math.sqrt(own2 + residual2 * calibration.spread2[s]));
      sums.under[s] += share;
      middle += share / shared.draws();
    }
    double mean = factor * Math.exp(centre);
    double spread = own2 + residual2;
    sums.heads.add(new HeadSpread.Head(Math.exp(centre), Math.sqrt(spread), stands));
    sums.ownVariance += mean * mean * (stands * Math.expm1(spread) + stands * (1 - stands));
    sums.shareVariance += middle * (1 - middle);
  }

  /** Returns the total area, lognormal about its mean. */
  private Amount area(int day, double stands) {
    double mean = 0;
    double ownVariance = 0;
    double sharedSd = 0;
    for (Outlook plant : plants) {
      Outlook.Size size = plant.days().get(day);
      double one = Math.exp(size.lnArea() + size.ownSd() * size.ownSd() / 2);
      mean += stands * one;
      ownVariance +=
          one * one * (stands * Math.expm1(size.ownSd() * size.ownSd()) + stands * (1 - stands));
      sharedSd += stands * one * plant.growth().sharedSd(day);
    }
    if (mean <= 0) {
      return new Amount(0, 0, 0, 0, 0);
    }
    double sd = Math.sqrt(Math.log1p((ownVariance + sharedSd * sharedSd) / (mean * mean)));
    return new Amount(
        mean,
        mean * Math.exp(-1.2815515655446004 * sd - sd * sd / 2),
        mean * Math.exp(1.2815515655446004 * sd - sd * sd / 2),
        mean * Math.exp(-1.959963984540054 * sd - sd * sd / 2),
        mean * Math.exp(1.959963984540054 * sd - sd * sd / 2));
  }

  private Set<String> warnings(int day, Optional<List<Weighing.Row>> rows) {
    TreeSet<String> warnings = new TreeSet<>();
    TreeMap<String, Integer> remarks = new TreeMap<>();
    rows.ifPresent(
        all -> all.forEach(r -> r.how.remark().ifPresent(w -> remarks.merge(w, 1, Integer::sum))));
    remarks.forEach((w, n) -> warnings.add(n + " of " + plants.size() + " heads " + w));
    if (weighing.isEmpty()) {
      warnings.add("no grader of " + who.crop() + ": area only");
    } else if (rows.isEmpty()) {
      warnings.add("the grader tells no such plants (variety or regime not weighed): area only");
    }
    for (Outlook plant : plants) {
      CohortGrowth growth = plant.growth();
      if (day + growth.daysSinceSeen() > growth.reachDays()) {
        warnings.add("further ahead than the curve's photos reach");
        growth.doubt().ifPresent(warnings::add);
      }
      if (growth.rough()) {
        warnings.add(
            "the crop has fewer past cycles than its growth curve needs: a rough forecast");
      }
      if (growth.daysSinceSeen() >= 3) {
        warnings.add("last photos are %.0f days old".formatted(growth.daysSinceSeen()));
      }
    }
    double age = who.ageDays() + day;
    who.harvest()
        .filter(h -> age > h.windowToDat())
        .ifPresent(h -> warnings.add("past the crop's harvest window"));
    return warnings;
  }

  private static String regime(Optional<List<Weighing.Row>> rows) {
    TreeSet<String> names = new TreeSet<>();
    rows.ifPresent(all -> all.forEach(r -> names.add(r.how.regime().toString())));
    return names.size() > 1 ? "mixed" : names.isEmpty() ? "" : names.first();
  }
}
