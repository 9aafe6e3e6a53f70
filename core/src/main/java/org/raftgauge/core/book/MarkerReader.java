// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.table.NumberRange;

/** Reads what is fixed to a board: corner markers, tag, orientation mark. */
final class MarkerReader {
  private static final NumberRange SIDE = NumberRange.aboveZero(1_000);
  private static final NumberRange PLACE = NumberRange.from(-20_000, 20_000);
  private static final String FAMILY = "tag36h11";

  private MarkerReader() {}

  static Optional<CornerMarkers> markers(YamlMap map) {
    int errorsBefore = map.findings().errors();
    map.value("family").ifPresent(MarkerReader::checkFamily);
    double side = map.requiredNumber("side_mm", SIDE);
    List<PointMm> centres = map.required("centres_mm").map(MarkerReader::centres).orElse(List.of());
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new CornerMarkers(side, centres));
  }

  private static void checkFamily(YamlValue value) {
    value
        .text()
        .filter(family -> !family.equals(FAMILY))
        .ifPresent(
            family ->
                value.error(
                    "the marker family \"" + family + "\" is unknown",
                    NearestSpelling.remedy(family, List.of(FAMILY))));
  }

  private static List<PointMm> centres(YamlValue value) {
    int errorsBefore = value.findings().errors();
    List<PointMm> centres = new ArrayList<>();
    for (YamlValue item : value.list()) {
      item.numbers(2, PLACE).ifPresent(xy -> centres.add(new PointMm(xy.get(0), xy.get(1))));
    }
    if (value.findings().errors() > errorsBefore) {
      return List.of();
    }
    if (centres.size() != 4) {
      value.error("there are " + centres.size() + " centres", "give four, for the ids 0, 1, 2, 3");
    } else if (!Corners.areConvexClockwise(
        centres.stream().map(c -> new PointPx(c.xMm(), c.yMm())).toList())) {
      value.error(
          "the centres do not go clockwise",
          "begin at the corner nearest A1 and go clockwise, as seen from above");
    }
    return centres;
  }

  static Optional<TagPlace> tag(YamlMap map) {
    int errorsBefore = map.findings().errors();
    double x = map.requiredNumber("x_mm", PLACE);
    double y = map.requiredNumber("y_mm", PLACE);
    double side = map.requiredNumber("side_mm", SIDE);
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new TagPlace(x, y, side));
  }

  static Optional<OrientationMark> mark(YamlMap map) {
    int errorsBefore = map.findings().errors();
    double x = map.requiredNumber("x_mm", PLACE);
    double y = map.requiredNumber("y_mm", PLACE);
    double diameter = map.requiredNumber("diameter_mm", SIDE);
    Optional<OrientationMark.Look> look =
        map.required("look").flatMap(value -> value.choice(OrientationMark.Look.values()));
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : look.map(l -> new OrientationMark(x, y, diameter, l));
  }
}
