// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVRecord;

/**
 * What a run says of a site.
 *
 * @param projectedAreaCm2 cm2, absent where held
 * @param visibleAreaCm2 cm2, absent where held
 * @param closed true: the run says that the projected area is only a lower bound
 */
public record Answer(
    OptionalDouble projectedAreaCm2, OptionalDouble visibleAreaCm2, boolean closed) {

  /** The answer of a run that has no row for the site. */
  static final Answer NONE = new Answer(OptionalDouble.empty(), OptionalDouble.empty(), false);

  /**
   * Reads a run's {@code sites.csv}.
   *
   * @param file the file
   * @return the answers by site
   * @throws IOException if it cannot be read
   */
  public static Map<SiteKey, Answer> read(Path file) throws IOException {
    Map<SiteKey, Answer> answers = new HashMap<>();
    for (CSVRecord row : Table.read(file)) {
      answers.put(SiteKey.of(row), of(row));
    }
    return answers;
  }

  /**
   * Reads what a run's photos said by themselves, without the evenings before.
   *
   * @param file {@code sites.csv} of a run of this program
   * @return the answers by site
   * @throws IOException if it cannot be read
   */
  public static Map<SiteKey, Answer> readPhotosAlone(Path file) throws IOException {
    Map<SiteKey, Answer> answers = new HashMap<>();
    for (CSVRecord row : Table.read(file)) {
      double moved = optional(row.get("split_moved_cm2")).orElse(0);
      answers.put(SiteKey.of(row), of(row).less(moved));
    }
    return answers;
  }

  private static Answer of(CSVRecord row) {
    return new Answer(
        optional(Table.cell(row, "projected_area_cm2")),
        optional(Table.cell(row, "visible_area_cm2")),
        isTrue(Table.cell(row, "closed")));
  }

  private Answer less(double cm2) {
    return new Answer(less(projectedAreaCm2, cm2), less(visibleAreaCm2, cm2), closed);
  }

  private static OptionalDouble less(OptionalDouble area, double cm2) {
    return area.isPresent() ? OptionalDouble.of(area.getAsDouble() - cm2) : area;
  }

  private static OptionalDouble optional(String cell) {
    return cell.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
  }

  private static boolean isTrue(String cell) {
    return cell.equalsIgnoreCase("true") || cell.equalsIgnoreCase("yes") || cell.equals("1");
  }
}
