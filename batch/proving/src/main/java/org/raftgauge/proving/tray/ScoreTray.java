// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.tray;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.track.Tray;

/**
 * What the program found on a tray beside the truth.
 *
 * @param plan which tray
 * @param emerged share emerged by photo
 * @param trueHalfDas when half of the cells had emerged, days after sowing
 * @param half the same as the program says
 * @param doubles cells with two seedlings on the last photo
 * @param empties cells in which nothing came
 * @param lost cells with a seedling that was not seen, by its age
 * @param refused why photos were not measured
 */
record ScoreTray(
    TrayPlan plan,
    List<Share> emerged,
    double trueHalfDas,
    Optional<Tray.HalfEmerged> half,
    Found doubles,
    Found empties,
    List<Lost> lost,
    List<String> refused) {

  /** Ages at which seedlings are looked for, days since they show: the end of each class. */
  static final List<Double> AGES = List.of(0.25, 0.5, 1.0, 2.0, 8.0);

  /**
   * Share emerged on a photo.
   *
   * @param day after sowing
   * @param truth with a seedling, cells
   * @param found cells in which canopy has been seen by then
   * @param bare cells without a seedling in which canopy is seen on this photo
   * @param cells sown
   */
  record Share(int day, int truth, int found, int bare, int cells) {
    /** Returns found less true, percentage points. */
    double points() {
      return 100.0 * (found - truth) / cells;
    }
  }

  /** Cells of a kind: how many there are, how many of them were found, how many others named. */
  record Found(int truth, int found, int others) {}

  /** Cells with a seedling up to some days old: how many looks, how many saw nothing. */
  record Lost(double upToDays, int looks, int lost) {}

  /** Sows, photographs and scores a tray; photos in the folder are used again. */
  static ScoreTray of(TrayPlan plan, List<Integer> days, Path work) throws IOException {
    List<SowTray.Cell> cells = SowTray.cells(plan);
    MeasureTray.Said said = MeasureTray.of(plan, days, work);
    double last = days.get(days.size() - 1) + TrayPlan.PHOTO_TIME;
    return new ScoreTray(
        plan,
        shares(cells, said),
        half(cells),
        said.tray().halfEmerged(),
        found(
            cells.stream()
                .filter(c -> c.doubled() && c.emerged(last))
                .map(SowTray.Cell::site)
                .collect(Collectors.toSet()),
            said.tray().several()),
        found(
            cells.stream()
                .filter(c -> !c.emerged(last))
                .map(SowTray.Cell::site)
                .collect(Collectors.toSet()),
            said.tray().none()),
        lost(cells, said.looks()),
        said.refused());
  }

  private static List<Share> shares(List<SowTray.Cell> cells, MeasureTray.Said said) {
    List<Share> shares = new ArrayList<>();
    for (Tray.Emerged day : said.tray().days()) {
      double das = day.das();
      Set<SiteId> bare =
          cells.stream()
              .filter(c -> !c.emerged(das))
              .map(SowTray.Cell::site)
              .collect(Collectors.toSet());
      int seen = 0;
      for (SiteLook look : said.looks()) {
        boolean on = das(look) == das && bare.contains(look.measure().site());
        seen += on && look.measure().projectedAreaCm2().orElse(0) > 0 ? 1 : 0;
      }
      shares.add(
          new Share((int) das, cells.size() - bare.size(), day.emerged(), seen, cells.size()));
    }
    return shares;
  }

  private static double das(SiteLook look) {
    return look.takenAt().toLocalDate().toEpochDay()
        - TrayPlan.SOWN_ON.toEpochDay()
        + TrayPlan.PHOTO_TIME;
  }

  private static double half(List<SowTray.Cell> cells) {
    double[] sorted = cells.stream().mapToDouble(SowTray.Cell::emergesDas).sorted().toArray();
    return sorted[(sorted.length - 1) / 2];
  }

  private static Found found(Set<SiteId> truth, List<SiteId> named) {
    int found = (int) named.stream().filter(truth::contains).count();
    return new Found(truth.size(), found, named.size() - found);
  }

  private static List<Lost> lost(List<SowTray.Cell> cells, List<SiteLook> looks) {
    Map<SiteId, SowTray.Cell> bySite =
        cells.stream().collect(Collectors.toMap(SowTray.Cell::site, c -> c));
    List<Lost> lost = new ArrayList<>();
    double from = 0;
    for (double to : AGES) {
      int all = 0;
      int missed = 0;
      for (SiteLook look : looks) {
        double age = das(look) - bySite.get(look.measure().site()).emergesDas();
        if (age >= from && age < to) {
          all++;
          missed += look.measure().projectedAreaCm2().orElse(0) > 0 ? 0 : 1;
        }
      }
      lost.add(new Lost(to, all, missed));
      from = to;
    }
    return lost;
  }
}
