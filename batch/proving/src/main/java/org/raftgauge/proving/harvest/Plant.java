// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.util.Random;
import org.raftgauge.core.book.SiteId;

/** A simulated plant with its truth. */
final class Plant {
  private static final int LAST = SeasonSetting.HARVEST_DAT + 30;

  final String raft;
  final SiteId site;
  final double[] lnArea = new double[LAST + 1];
  final double persistent;
  final double weightOff;
  final int diesOn;

  Plant(String raft, SiteId site, Climate climate, Draws draws) {
    this.raft = raft;
    this.site = site;
    SeasonSetting setting = draws.setting();
    Random random = draws.random();
    double size = setting.plantSd() * random.nextGaussian();
    double wander = 0;
    for (int d = 0; d <= LAST; d++) {
      wander += setting.wanderSd() * random.nextGaussian();
      lnArea[d] = climate.lnArea(d) + size + wander;
    }
    persistent = setting.persistentSd() * random.nextGaussian();
    weightOff = setting.weightSd() * random.nextGaussian();
    diesOn = (int) Math.ceil(-Math.log(1 - random.nextDouble()) / setting.lostPerDay());
  }

  /** Setting and chance. */
  record Draws(SeasonSetting setting, Random random) {}

  boolean standsOn(int dat) {
    return dat < diesOn;
  }

  /** Returns the area that its site shows, without error, cm2. */
  double shownCm2(SeasonSetting setting, int dat) {
    double area = Math.exp(lnArea[dat]);
    return setting.closes() ? Math.min(area, SeasonSetting.PITCH_CM2) : area;
  }

  boolean closed(SeasonSetting setting, int dat) {
    return setting.closes() && Math.exp(lnArea[dat]) > 0.9 * SeasonSetting.PITCH_CM2;
  }
}
