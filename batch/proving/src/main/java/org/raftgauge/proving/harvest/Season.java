// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;

/** A simulated farm: past cycles, tonight's cohort, the photos' areas, and true weights. */
final class Season {
  static final LocalDate TONIGHTS = LocalDate.of(2026, 4, 1);
  private static final int CYCLE_DAYS = 40;
  private static final int PAST_RAFTS = 2;
  static final int LAST_PHOTO_DAT = SeasonSetting.HARVEST_DAT + 2;
  private static final int FIRST_PHOTO_DAT = 4;
  private static final int FIRST_PICK_DAT = 22;
  private static final int PICK_STEP = 4;

  /** Age at which past cycles were harvested: the morning after their last photo. */
  static final int HARVESTED_DAT = LAST_PHOTO_DAT + 1;

  private static final double HEAD_G = 150;

  final SeasonSetting setting;
  final List<List<Plant>> past = new ArrayList<>();
  final List<Plant> now = new ArrayList<>();
  final List<Pick> picks = new ArrayList<>();
  final List<SiteLook> looks = new ArrayList<>();
  final double minimumG;
  final Random random;
  final Climate climate;
  final double exponent;
  private final double reference;

  Season(SeasonSetting setting, long seed) {
    this.setting = setting;
    this.random = new Random(seed);
    Climate.Usual usual = Climate.Usual.draw(random);
    this.exponent = 1.1 + 0.25 * random.nextDouble();
    this.reference = Math.log(usual.harvestCm2());
    double weightSd = Math.hypot(exponent * setting.plantSd(), setting.weightSd());
    // About one head in ten of the usual cycle is lighter than this on the day of harvest.
    this.minimumG = HEAD_G * Math.exp(-1.2815515655446004 * weightSd);
    for (int cycle = 0; cycle < setting.pastCycles(); cycle++) {
      past.add(grow("P" + cycle + "-", PAST_RAFTS, new Climate(usual, setting, random)));
    }
    climate = new Climate(usual, setting, random);
    now.addAll(grow("N-", setting.rafts(), climate));
    for (int cycle = 0; cycle < past.size(); cycle++) {
      photograph(past.get(cycle), starts(cycle), LAST_PHOTO_DAT);
    }
    photograph(now, TONIGHTS, SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD);
    pick();
  }

  /** Picks plants of the latest past cycle, spread over the days of the harvest range. */
  private void pick() {
    List<Plant> plants = new ArrayList<>(past.get(0));
    Collections.shuffle(plants, random);
    for (int i = 0; picks.size() < setting.picks() && i < plants.size(); i++) {
      int dat =
          FIRST_PICK_DAT + PICK_STEP * (i % ((LAST_PHOTO_DAT - FIRST_PICK_DAT) / PICK_STEP + 1));
      if (plants.get(i).standsOn(dat)) {
        picks.add(new Pick(plants.get(i), dat));
      }
    }
  }

  /** A plant weighed on a day. */
  record Pick(Plant plant, int dat) {}

  static LocalDate starts(int cycle) {
    return TONIGHTS.minusDays((long) CYCLE_DAYS * (cycle + 1));
  }

  private List<Plant> grow(String name, int rafts, Climate climate) {
    List<Plant> plants = new ArrayList<>();
    for (int raft = 0; raft < rafts; raft++) {
      for (int site = 0; site < 18; site++) {
        plants.add(
            new Plant(
                name + raft,
                new SiteId(site / 3, site % 3),
                climate,
                new Plant.Draws(setting, random)));
      }
    }
    return plants;
  }

  /** Returns the days of a cycle's photos: every second from day 4, the last one first. */
  static List<Integer> photographedOn(int last) {
    return IntStream.rangeClosed(0, (last - FIRST_PHOTO_DAT) / 2)
        .mapToObj(i -> last - 2 * i)
        .toList();
  }

  private void photograph(List<Plant> plants, LocalDate start, int last) {
    for (int dat : photographedOn(last)) {
      for (Plant plant : plants) {
        if (plant.standsOn(dat)) {
          looks.add(look(plant, start, dat));
        }
      }
    }
  }

  private SiteLook look(Plant plant, LocalDate start, int dat) {
    double area = measuredCm2(plant, dat);
    SiteMeasure measure =
        new SiteMeasure(
            plant.site,
            OptionalDouble.of(area),
            OptionalDouble.of(area * setting.freshSd()),
            OptionalDouble.of(area),
            plant.closed(setting, dat),
            0,
            0,
            1,
            List.of(),
            List.of(),
            1,
            "");
    return new SiteLook(
        plant.raft + "-" + dat,
        "bench",
        plant.raft,
        start.plusDays(dat).atTime(18, 0).atOffset(ZoneOffset.UTC),
        measure);
  }

  double measuredCm2(Plant plant, int dat) {
    double error = plant.persistent + setting.freshSd() * random.nextGaussian();
    return plant.shownCm2(setting, dat) * Math.exp(error);
  }

  /** Returns a plant's true weight, g. */
  double weightG(Plant plant, int dat) {
    return Math.exp(lnWeightOfLine(plant.lnArea[dat]) + plant.weightOff);
  }

  /** Returns the ln weight, g, of a plant on the line. */
  double lnWeightOfLine(double lnArea) {
    return Math.log(HEAD_G) + exponent * (lnArea - reference);
  }
}
