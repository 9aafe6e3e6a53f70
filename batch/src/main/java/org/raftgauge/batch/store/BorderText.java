// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.BorderTakes;

/** Borders between plants as the history's text, a line each: every number comes back exactly. */
final class BorderText {
  private static final String BETWEEN = ";";

  /** Site, neighbour and ratio come before the tables. */
  private static final int TABLES = 3;

  private BorderText() {}

  static String of(List<Border> borders) {
    return borders.stream().map(BorderText::line).collect(Collectors.joining("\n"));
  }

  private static String line(Border border) {
    Stream<Object> first = Stream.of(border.site(), border.neighbour(), border.lnRatio());
    return Stream.concat(first, Stream.of(border.taken(), border.given()).flatMap(BorderText::mm2))
        .map(Object::toString)
        .collect(Collectors.joining(BETWEEN));
  }

  private static Stream<Object> mm2(BorderTakes takes) {
    return IntStream.rangeClosed(1, Border.STEPS)
        .mapToObj(step -> Math.round(100 * takes.cm2(step)));
  }

  /**
   * Reads borders back.
   *
   * @param text as written
   * @param names sites by name; those not there are added
   */
  static List<Border> read(String text, Map<String, SiteId> names) {
    List<Border> borders = new ArrayList<>();
    if (!text.isEmpty()) {
      for (String line : text.split("\n", -1)) {
        String[] cells = line.split(BETWEEN, -1);
        borders.add(
            new Border(
                names.computeIfAbsent(cells[0], SiteId::parse),
                names.computeIfAbsent(cells[1], SiteId::parse),
                Double.parseDouble(cells[2]),
                takes(cells, TABLES),
                takes(cells, TABLES + Border.STEPS)));
      }
    }
    return borders;
  }

  private static BorderTakes takes(String[] cells, int from) {
    return new BorderTakes(
        Integer.parseInt(cells[from]),
        Integer.parseInt(cells[from + 1]),
        Integer.parseInt(cells[from + 2]),
        Integer.parseInt(cells[from + 3]),
        Integer.parseInt(cells[from + 4]));
  }
}
