// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.site.Border;

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
    Stream<String> names = Stream.of(border.site().toString(), border.neighbour().toString());
    Stream<Double> tables = Stream.concat(border.takenCm2().stream(), border.givenCm2().stream());
    Stream<Double> numbers = Stream.concat(Stream.of(border.lnRatio()), tables);
    return Stream.concat(names, numbers.map(BorderText::number))
        .collect(Collectors.joining(BETWEEN));
  }

  private static String number(double value) {
    return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
  }

  static List<Border> read(String text) {
    List<Border> borders = new ArrayList<>();
    if (!text.isEmpty()) {
      for (String line : text.split("\n", -1)) {
        borders.add(border(line.split(BETWEEN, -1)));
      }
    }
    return borders;
  }

  private static Border border(String[] cells) {
    List<Double> numbers = new ArrayList<>();
    for (int i = TABLES; i < cells.length; i++) {
      numbers.add(Double.parseDouble(cells[i]));
    }
    return new Border(
        SiteId.parse(cells[0]),
        SiteId.parse(cells[1]),
        Double.parseDouble(cells[2]),
        numbers.subList(0, Border.STEPS),
        numbers.subList(Border.STEPS, numbers.size()));
  }
}
