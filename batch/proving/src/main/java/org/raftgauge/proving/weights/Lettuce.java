// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.weights;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.Traits;
import org.raftgauge.core.grader.Weighed;

/**
 * One plant of the table.
 *
 * @param id its number there
 * @param variety its variety
 * @param numbers its sizes by column
 */
record Lettuce(String id, String variety, Map<String, Double> numbers) {
  private static final OffsetDateTime THEN = OffsetDateTime.parse("2021-06-01T12:00Z");

  /** Which area a plant is weighed by. */
  enum Area {
    /** Total leaf area. */
    LEAF,
    /** The disc of its diameter. */
    DISC
  }

  /** Reads the table. */
  static List<Lettuce> read(Path file) throws IOException {
    List<String> lines = Files.readAllLines(file);
    String[] header = lines.get(0).split(",", -1);
    List<Lettuce> plants = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      Map<String, Double> numbers = new LinkedHashMap<>();
      for (int i = 2; i < cells.length; i++) {
        numbers.put(header[i], Double.parseDouble(cells[i]));
      }
      plants.add(new Lettuce(cells[0], cells[1], numbers));
    }
    return plants;
  }

  double weightG() {
    return numbers.get("fresh_weight_g");
  }

  /** Returns it as a weighed open plant of some variety name. */
  Weighed weighed(Area area, String as) {
    double cm2 =
        area == Area.LEAF
            ? numbers.get("leaf_area_cm2")
            : Math.PI / 4 * Math.pow(numbers.get("diameter_cm"), 2);
    Traits traits =
        new Traits(
            as,
            OptionalDouble.of(cm2),
            OptionalDouble.of(10 * numbers.get("height_cm")),
            OptionalDouble.empty());
    int number = Integer.parseInt(id);
    // Each on a raft of its own, so that no two could have been mixed up.
    return new Weighed(
        number, "plant-" + id, new SiteId(0, 0), THEN, weightG(), traits, Regime.OPEN, "none");
  }
}
