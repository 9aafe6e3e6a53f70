// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.core.book.SiteId;

/** Tells of each border between two plants what moves when their sizes are judged otherwise. */
final class FindBorders {
  /** Borders that move less than this are as good as none, cm2. */
  private static final double LEAST_CM2 = 0.2;

  private final List<SiteId> sites;
  private final double[] speeds;
  private final double pixelCm2;
  private final Map<Integer, double[][]> areas = new TreeMap<>();

  /**
   * @param sites in the order of the grid
   * @param speeds of each, as the paths ran
   * @param pixelCm2 area of a pixel of the paths
   */
  FindBorders(List<SiteId> sites, double[] speeds, double pixelCm2) {
    this.sites = sites;
    this.speeds = speeds;
    this.pixelCm2 = pixelCm2;
  }

  /**
   * Finds the borders.
   *
   * @param paths that have run with these speeds
   * @param owners whose each pixel of the paths is in the end
   */
  List<Border> of(CanopyPaths paths, short[] owners) {
    RivalPaths rivals = new RivalPaths(paths, Math.exp(Border.STEP * Border.STEPS));
    for (int y = 0, i = 0; y < paths.height(); y++) {
      for (int x = 0; x < paths.width(); x++, i++) {
        short rival = rivals.rival(x, y);
        if (rival != AllotCanopy.NONE && owners[i] == paths.by(paths.at(x, y))) {
          add(owners[i], rival, Math.log(rivals.times(x, y)));
        }
      }
    }
    List<Border> borders = new ArrayList<>();
    areas.forEach((pair, tables) -> border(pair, tables, borders));
    return borders;
  }

  /** Notes a pixel that goes to its rival once that has grown by so much. */
  private void add(short owner, short rival, double ln) {
    int step = (int) Math.floor(ln / Border.STEP);
    if (step < Border.STEPS) {
      int pair = Math.min(owner, rival) * sites.size() + Math.max(owner, rival);
      double[][] tables = areas.computeIfAbsent(pair, p -> new double[2][Border.STEPS]);
      tables[rival < owner ? 0 : 1][step] += pixelCm2;
    }
  }

  private void border(int pair, double[][] tables, List<Border> borders) {
    for (double[] table : tables) {
      for (int step = 1; step < table.length; step++) {
        table[step] += table[step - 1];
      }
    }
    if (tables[0][Border.STEPS - 1] + tables[1][Border.STEPS - 1] >= LEAST_CM2) {
      int site = Math.floorDiv(pair, sites.size());
      int neighbour = pair % sites.size();
      borders.add(
          new Border(
              sites.get(site),
              sites.get(neighbour),
              rounded(Math.log(speeds[site] / speeds[neighbour])),
              BorderTakes.ofCm2(tables[0]),
              BorderTakes.ofCm2(tables[1])));
    }
  }

  private static double rounded(double ln) {
    return Math.round(ln * 1e4) / 1e4;
  }
}
