// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.NumberRange;

/** Reads one layout of {@code layouts.yaml}, with its dated versions. */
final class LayoutReader {
  private static final NumberRange SIZE = NumberRange.aboveZero(20_000);
  private static final NumberRange PLACE = NumberRange.from(-20_000, 20_000);
  private static final NumberRange COUNT = NumberRange.from(1, 200);

  private LayoutReader() {}

  /** Returns the versions in the order of their dates; none where one of them is wrong. */
  static List<Layout> read(String name, YamlValue value) {
    int errorsBefore = value.findings().errors();
    List<Layout> versions = new ArrayList<>();
    for (YamlValue version : value.isList() ? value.list() : List.of(value)) {
      version.map().flatMap(map -> version(name, map)).ifPresent(versions::add);
    }
    versions.sort(Comparator.comparing(layout -> layout.from().orElse(LocalDate.MIN)));
    for (int i = 1; i < versions.size(); i++) {
      if (versions.get(i).from().equals(versions.get(i - 1).from())) {
        String day = versions.get(i).from().map(LocalDate::toString).orElse("no day");
        value.error("two versions hold from " + day, "give each version its own from");
      }
    }
    return value.findings().errors() == errorsBefore ? List.copyOf(versions) : List.of();
  }

  private static Optional<Layout> version(String name, YamlMap map) {
    Findings findings = map.findings();
    int errorsBefore = findings.errors();
    Optional<LocalDate> from = map.value("from").flatMap(YamlValue::date);
    Optional<Board> board = map.requiredMap("board").flatMap(LayoutReader::board);
    Optional<SiteGrid> grid = map.requiredMap("sites").flatMap(LayoutReader::grid);
    Optional<CornerMarkers> markers = map.map("markers").flatMap(MarkerReader::markers);
    Optional<TagPlace> tag = map.map("tag").flatMap(MarkerReader::tag);
    Optional<OrientationMark> mark = map.map("orientation_mark").flatMap(MarkerReader::mark);
    map.finish();
    if (findings.errors() > errorsBefore) {
      return Optional.empty();
    }
    Layout layout =
        new Layout(name, from, board.orElseThrow(), grid.orElseThrow(), markers, tag, mark);
    checkPlaces(map, layout);
    return findings.errors() > errorsBefore ? Optional.empty() : Optional.of(layout);
  }

  private static Optional<Board> board(YamlMap map) {
    int errorsBefore = map.findings().errors();
    double width = map.requiredNumber("width_mm", SIZE);
    double length = map.requiredNumber("length_mm", SIZE);
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new Board(width, length));
  }

  private static Optional<SiteGrid> grid(YamlMap map) {
    int errorsBefore = map.findings().errors();
    int rows = map.requiredWhole("rows", COUNT);
    int columns = map.requiredWhole("columns", COUNT);
    double firstX = map.requiredNumber("first_x_mm", PLACE);
    double firstY = map.requiredNumber("first_y_mm", PLACE);
    double pitchX = map.requiredNumber("pitch_x_mm", SIZE);
    double pitchY = map.requiredNumber("pitch_y_mm", SIZE);
    double stagger = map.number("stagger_x_mm", PLACE).orElse(0);
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new SiteGrid(rows, columns, firstX, firstY, pitchX, pitchY, stagger));
  }

  private static void checkPlaces(YamlMap map, Layout layout) {
    for (SiteId site : layout.grid().sites()) {
      if (!onBoard(layout.board(), layout.grid().centre(site))) {
        PointMm at = layout.grid().centre(site);
        map.value("sites")
            .get()
            .error(
                "site " + site + " at " + shown(at) + " is off the board of " + shown(layout),
                "mend the first site, the pitches, the numbers of rows and columns, or the board");
        break;
      }
    }
    layout
        .markers()
        .ifPresent(
            markers -> {
              for (int i = 0; i < 4; i++) {
                check(map, "markers", "marker " + i, markers.centresMm().get(i), layout);
              }
            });
    layout
        .tag()
        .ifPresent(t -> check(map, "tag", "the tag", new PointMm(t.xMm(), t.yMm()), layout));
    layout
        .orientationMark()
        .ifPresent(
            m -> check(map, "orientation_mark", "the mark", new PointMm(m.xMm(), m.yMm()), layout));
  }

  private static void check(YamlMap map, String key, String what, PointMm at, Layout layout) {
    if (!onBoard(layout.board(), at)) {
      map.value(key)
          .get()
          .error(
              what + " at " + shown(at) + " is off the board of " + shown(layout),
              "measure in mm from the board's corner nearest A1");
    }
  }

  private static boolean onBoard(Board board, PointMm at) {
    return at.xMm() >= 0
        && at.yMm() >= 0
        && at.xMm() <= board.widthMm()
        && at.yMm() <= board.lengthMm();
  }

  private static String shown(PointMm at) {
    return plain(at.xMm()) + ", " + plain(at.yMm()) + " mm";
  }

  private static String shown(Layout layout) {
    return plain(layout.board().widthMm()) + " x " + plain(layout.board().lengthMm()) + " mm";
  }

  private static String plain(double mm) {
    return java.math.BigDecimal.valueOf(mm).stripTrailingZeros().toPlainString();
  }
}
