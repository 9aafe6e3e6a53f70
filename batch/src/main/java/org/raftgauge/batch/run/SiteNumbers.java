// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.relief.HeightSource;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.table.Cells;
import org.raftgauge.core.table.NumberRange;

/** The numbers of a row of {@code sites.csv}; those that are not given stay unknown. */
record SiteNumbers(
    OptionalDouble area,
    OptionalDouble areaSe,
    OptionalDouble visible,
    boolean closed,
    double shared,
    double heightMm,
    double parallax,
    List<SiteMeasure.Shape> shape,
    List<SiteMeasure.Colour> colour,
    double quality,
    List<SiteMeasure.Relief> relief) {
  private static final NumberRange FRACTION = NumberRange.from(0, 1);
  private static final NumberRange LENGTH = NumberRange.from(0, 1e5);
  private static final NumberRange ANY = NumberRange.from(-1e5, 1e5);

  /** Reads them; what is wrong is said to the cells. */
  static SiteNumbers read(Cells cells, double mostCm2) {
    NumberRange areas = NumberRange.from(0, mostCm2);
    String closed = cells.text("closed");
    if (!List.of("", "true", "false").contains(closed)) {
      cells.unknown("closed", closed, List.of("true", "false"));
    }
    return new SiteNumbers(
        cells.number("projected_area_cm2", areas),
        cells.number("projected_area_se_cm2", areas),
        cells.number("visible_area_cm2", areas),
        closed.equals("true"),
        cells.number("shared_outline_fraction", FRACTION).orElse(0),
        cells.number("height_mm", LENGTH).orElse(0),
        cells.number("parallax_factor", NumberRange.from(0, 10)).orElse(1),
        shape(cells),
        colour(cells),
        cells.number("quality", FRACTION).orElse(1),
        relief(cells));
  }

  /** Returns the outline's traits, where all of them are given. */
  private static List<SiteMeasure.Shape> shape(Cells cells) {
    double[] n =
        all(
            cells.number("equivalent_diameter_mm", LENGTH),
            cells.number("largest_diameter_mm", LENGTH),
            cells.number("perimeter_mm", LENGTH),
            cells.number("solidity", NumberRange.from(0, 2)),
            cells.number("offset_x_mm", ANY),
            cells.number("offset_y_mm", ANY));
    return n.length == 0
        ? List.of()
        : List.of(new SiteMeasure.Shape(n[0], n[1], n[2], n[3], n[4], n[5]));
  }

  /** Returns the leaf colour, where all of it is given. */
  private static List<SiteMeasure.Colour> colour(Cells cells) {
    double[] n =
        all(
            cells.number("lab_l", ANY),
            cells.number("lab_a", ANY),
            cells.number("lab_b", ANY),
            cells.number("pale_fraction", FRACTION),
            cells.number("dead_fraction", FRACTION));
    return n.length == 0
        ? List.of()
        : List.of(new SiteMeasure.Colour(n[0], n[1], n[2], n[3], n[4]));
  }

  /** Returns the height that a second camera saw, where all of it is given. */
  private static List<SiteMeasure.Relief> relief(Cells cells) {
    String source = cells.text("height_source");
    double[] n =
        all(
            cells.number("height_p95_mm", LENGTH),
            cells.number("canopy_volume_cm3", NumberRange.from(0, 1e7)),
            cells.number("height_seen_fraction", FRACTION));
    return List.of(HeightSource.values()).stream()
        .filter(s -> n.length > 0 && s.name().toLowerCase(Locale.ROOT).equals(source))
        .map(s -> new SiteMeasure.Relief(s, n[0], n[1], n[2]))
        .toList();
  }

  private static double[] all(OptionalDouble... numbers) {
    List<OptionalDouble> list = List.of(numbers);
    return list.stream().allMatch(OptionalDouble::isPresent)
        ? list.stream().mapToDouble(OptionalDouble::getAsDouble).toArray()
        : new double[0];
  }

  SiteMeasure measure(SiteId site, String held) {
    return new SiteMeasure(
        site, area, areaSe, visible, closed, shared, heightMm, parallax, shape, colour, quality,
        held, relief, 0);
  }
}
