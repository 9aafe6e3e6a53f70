// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.tray;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.TagPlace;

/**
 * A tray to be sown and photographed.
 *
 * @param name its id, also on its tag
 * @param layout its cells
 * @param seed of seedlings, light and camera
 */
record TrayPlan(String name, Layout layout, long seed) {
  /** The day of sowing. */
  static final LocalDate SOWN_ON = LocalDate.of(2026, 2, 2);

  /** Time of the photos as a fraction of the day: 18:00. */
  static final double PHOTO_TIME = 0.75;

  /** Days after sowing on which a photo is taken, at {@link #PHOTO_TIME}. */
  static final List<Integer> DAYS = List.of(2, 3, 4, 5, 6, 7, 9);

  /** 12 x 24 cells, 24 mm apart; sizes of cells as usual for such trays, no source. */
  static final Layout CELLS_288 = layout("tray-288", new SiteGrid(24, 12, 48, 74, 24, 24, 0));

  /** 16 x 32 cells, 17 mm apart. */
  static final Layout CELLS_512 = layout("tray-512", new SiteGrid(32, 16, 52.5, 86, 17, 17, 0));

  private static Layout layout(String name, SiteGrid grid) {
    List<PointMm> centres =
        List.of(
            new PointMm(20, 20), new PointMm(340, 20), new PointMm(340, 680), new PointMm(20, 680));
    return new Layout(
        name,
        Optional.empty(),
        new Board(360, 700),
        grid,
        Optional.of(new CornerMarkers(24, centres)),
        Optional.of(new TagPlace(180, 30, 36)),
        Optional.empty());
  }

  /** Plans as many trays of each kind. */
  static List<TrayPlan> plan(long seed, int each) {
    List<TrayPlan> plans = new ArrayList<>();
    for (int i = 0; i < each; i++) {
      plans.add(new TrayPlan("TS-" + (i + 1), CELLS_288, seed * 1000 + 2L * i));
      plans.add(new TrayPlan("TL-" + (i + 1), CELLS_512, seed * 1000 + 2L * i + 1));
    }
    return plans;
  }
}
