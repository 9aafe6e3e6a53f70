// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;

/**
 * The truth about a site on a photo.
 *
 * @param key which site of which photo
 * @param look what it is grouped by, such as its condition
 * @param projectedAreaCm2 cm2, 0 for an empty site
 * @param visibleAreaCm2 cm2, at most the projected area
 */
public record TruthSite(SiteKey key, String look, double projectedAreaCm2, double visibleAreaCm2) {

  /** Share of the projected area that must be visible for a site to count as open. */
  public static final double OPEN_SHARE = 0.98;

  /** Says whether a plant stands here. */
  public boolean planted() {
    return projectedAreaCm2 > 0;
  }

  /** Says whether nothing to speak of covers the plant. */
  public boolean open() {
    return planted() && visibleAreaCm2 >= OPEN_SHARE * projectedAreaCm2;
  }

  /**
   * Reads a truth file; {@code pla_cm2} and {@code visible_cm2} also name the areas.
   *
   * @param file truth.csv
   * @param look the column to group by, such as {@code condition}
   * @return the sites in the file's order
   * @throws IOException if it cannot be read
   */
  public static List<TruthSite> read(Path file, String look) throws IOException {
    List<TruthSite> sites = new ArrayList<>();
    for (CSVRecord row : Table.read(file)) {
      sites.add(
          new TruthSite(
              SiteKey.of(row),
              Table.cell(row, look),
              Table.number(row, "projected_area_cm2", "pla_cm2"),
              Table.number(row, "visible_area_cm2", "visible_cm2")));
    }
    return sites;
  }
}
