// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.farmyear;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.verdict.TrueSite;

/**
 * Grows a farm year day by day: batches of rafts of 20 plants; every seventh raft is cut once and
 * grows again; now and then the grower replaces the smallest plant of a raft, or two plants of a
 * raft change places.
 */
final class GrowFarm {
  static final LocalDate FIRST = LocalDate.of(2028, 9, 4);
  static final int PER_RAFT = 20;
  static final int COLUMNS = 4;
  private static final int CUT_AT = 17;

  private final YearPlan plan;
  private final SplittableRandom draw;
  private final double[] pace;
  private final Stand[][] stands;
  private final double[] raftFactors;
  private final List<String> events = new ArrayList<>();
  private final FarmPhotos photos;
  private final List<TrueSite> truth = new ArrayList<>();
  private LocalDate lostOn = FIRST;

  /** A plant in its hole: what it is called, and the day from which its days count. */
  record Stand(Lettuce plant, String name, int from, int cuts) {
    double dat(int day) {
      return day - from + 0.75;
    }
  }

  GrowFarm(YearPlan plan, long seed) {
    this.plan = plan;
    this.draw = new SplittableRandom(seed);
    this.photos = new FarmPhotos(plan, draw);
    this.pace = new double[days()];
    double wave = draw.nextDouble(0, 6);
    for (int day = 0; day < pace.length; day++) {
      // Slow spells of a fortnight and days of sun or cloud.
      pace[day] =
          1 + 0.18 * Math.sin(wave + day / 2.3) + 0.25 * (draw.nextDouble() - 0.5) - 0.004 * day;
    }
    this.stands = new Stand[plan.rafts()][PER_RAFT];
    this.raftFactors = new double[plan.rafts()];
    for (int raft = 0; raft < plan.rafts(); raft++) {
      raftFactors[raft] = Math.exp(0.13 * (draw.nextDouble() - 0.5));
      for (int site = 0; site < PER_RAFT; site++) {
        String name = raft(raft) + "/" + site(site);
        stands[raft][site] =
            new Stand(new Lettuce(draw, raftFactors[raft]), name, startsOn(raft), 0);
      }
    }
  }

  static int days() {
    return YearPlan.EVENINGS + YearPlan.BATCH_DAYS * (YearPlan.BATCHES - 1);
  }

  int rafts() {
    return plan.rafts();
  }

  static String raft(int raft) {
    return String.format(Locale.ROOT, "F%03d", raft);
  }

  static SiteId site(int site) {
    return new SiteId(site / COLUMNS, site % COLUMNS);
  }

  static String pond(int raft) {
    return "N" + (1 + raft % 4);
  }

  static int startsOn(int raft) {
    return YearPlan.BATCH_DAYS * (raft / 4 % YearPlan.BATCHES);
  }

  static String camera(int raft) {
    return raft % 4 < 2 ? "east" : YearPlan.DIM_CAMERA;
  }

  /** Returns what the grower wrote down, as rows of events.csv. */
  List<String> events() {
    return events;
  }

  /** Returns the first evening on which the feed that failed has cost 10 % of the plants' area. */
  LocalDate tenPercentLostOn() {
    return lostOn;
  }

  /** Grows all days. */
  List<TrueSite> grow() {
    double lost = 0;
    for (int day = 0; day < days(); day++) {
      boolean fails = plan.slowPond() && day > YearPlan.FAILS;
      if (fails) {
        double before = lost;
        lost += 0.4 * 0.11 * pace[day];
        if (before < -Math.log(0.9) && lost >= -Math.log(0.9)) {
          lostOn = FIRST.plusDays(day);
        }
      }
      for (int raft = 0; raft < plan.rafts(); raft++) {
        if (grows(raft, day)) {
          raftDay(raft, day, fails && pond(raft).equals(YearPlan.SLOW_POND) ? 0.6 : 1);
        }
      }
      truth.addAll(photos.evening(day, stands));
    }
    return truth;
  }

  static boolean grows(int raft, int day) {
    return day >= startsOn(raft) && day < startsOn(raft) + YearPlan.EVENINGS;
  }

  private void raftDay(int raft, int day, double feed) {
    for (int site = 0; site < PER_RAFT; site++) {
      Stand stand = stands[raft][site];
      if (day > stand.from()) {
        stand.plant().grow(stand.dat(day), pace[day], feed);
      }
    }
    boolean cut = raft % 7 == 3 && day == startsOn(raft) + CUT_AT;
    if (cut) {
      events.add(event(day, "cut", raft(raft), "", "", ""));
      for (int site = 0; site < PER_RAFT; site++) {
        Stand old = stands[raft][site];
        old.plant().cut();
        stands[raft][site] = new Stand(old.plant(), old.name() + "'", day, old.cuts() + 1);
      }
    } else if (draw.nextDouble() < 0.02 && day < startsOn(raft) + CUT_AT && day > startsOn(raft)) {
      replace(raft, day);
    } else if (draw.nextDouble() < 0.01 && day > startsOn(raft) + 3) {
      move(raft, day);
    }
  }

  /** Replaces the smallest plant of a raft. */
  private void replace(int raft, int day) {
    int worst = 0;
    for (int site = 1; site < PER_RAFT; site++) {
      worst =
          stands[raft][site].plant().areaCm2() < stands[raft][worst].plant().areaCm2()
              ? site
              : worst;
    }
    events.add(event(day, "replaced", raft(raft), site(worst).toString(), "", ""));
    stands[raft][worst] =
        new Stand(
            new Lettuce(draw, raftFactors[raft]),
            raft(raft) + "/" + site(worst) + "@" + day,
            day,
            0);
  }

  /** Changes the places of two plants of a raft with each other. */
  private void move(int raft, int day) {
    int a = draw.nextInt(PER_RAFT);
    int b = (a + 1 + draw.nextInt(PER_RAFT - 1)) % PER_RAFT;
    String both = site(a) + ";" + site(b);
    events.add(event(day, "moved", raft(raft), both, raft(raft), site(b) + ";" + site(a)));
    Stand moved = stands[raft][a];
    stands[raft][a] = stands[raft][b];
    stands[raft][b] = moved;
  }

  private static String event(
      int day, String kind, String raft, String site, String toRaft, String toSite) {
    String at = FIRST.plusDays(day) + "T09:00";
    return String.join(",", at, kind, raft, site, toRaft, toSite, "grower", "");
  }
}
