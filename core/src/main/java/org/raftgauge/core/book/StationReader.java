// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.table.NumberRange;

/** Reads one file of {@code stations/}. */
final class StationReader {
  static final NumberRange IMAGE = NumberRange.from(16, 30_000);

  /** A camera nearer than 100 mm sees no board: below that the height was written in metres. */
  private static final NumberRange CAMERA_HEIGHT = NumberRange.from(100, 50_000);

  private static final NumberRange FOCAL = NumberRange.aboveZero(1e6);
  private static final NumberRange PIXEL = NumberRange.from(-1e5, 1e5);
  private static final NumberRange DISTORTION = NumberRange.from(-100, 100);
  private static final NumberRange OFFSET_S = NumberRange.from(-1e9, 1e9);
  private static final Pattern OFFSET = Pattern.compile("([+-]?)(\\d{1,5}):([0-5]\\d)(:[0-5]\\d)?");

  private static final String MEND_CORNER =
      "mend the corner, or image_width_px and image_height_px";

  private StationReader() {}

  /** Reads a station; nothing where something in it is wrong. */
  static Optional<Station> read(String name, YamlMap map, Known layouts) {
    int errorsBefore = map.findings().errors();
    Optional<Station.Kind> kind =
        map.required("kind").flatMap(value -> value.choice(Station.Kind.values()));
    int cameras = cameras(map);
    Optional<SecondCamera> second = SecondCameraReader.read(map, cameras);
    int width = map.requiredWhole("image_width_px", IMAGE);
    int height = map.requiredWhole("image_height_px", IMAGE);
    Optional<Lens> lens = map.requiredMap("lens").flatMap(l -> lens(l, width, height));
    double cameraHeight = map.requiredNumber("camera_height_mm", CAMERA_HEIGHT);
    List<Slot> slots = slots(map, kind, layouts);
    Duration offset = clockOffset(map);
    List<LocalDate> changedOn =
        map.value("changed_on").map(YamlValue::list).orElse(List.of()).stream()
            .flatMap(item -> item.date().stream())
            .sorted()
            .toList();
    map.text("light");
    map.text("note");
    map.finish();
    if (map.findings().errors() > errorsBefore) {
      return Optional.empty();
    }
    Station station =
        new Station(
            name,
            kind.orElseThrow(),
            cameras,
            width,
            height,
            lens.orElseThrow(),
            cameraHeight,
            slots,
            offset,
            changedOn,
            second);
    checkInPicture(station, map);
    return map.findings().errors() > errorsBefore ? Optional.empty() : Optional.of(station);
  }

  private static int cameras(YamlMap map) {
    Optional<YamlValue> value = map.value("cameras");
    return value.map(cameras -> cameras.whole(NumberRange.from(1, 2))).orElse(1);
  }

  static Optional<Lens> lens(YamlMap map, int width, int height) {
    int errorsBefore = map.findings().errors();
    double fx = map.requiredNumber("fx_px", FOCAL);
    double fy = map.number("fy_px", FOCAL).orElse(fx);
    double cx = map.number("cx_px", PIXEL).orElse((width - 1) / 2.0);
    double cy = map.number("cy_px", PIXEL).orElse((height - 1) / 2.0);
    double[] k = new double[5];
    String[] keys = {"k1", "k2", "p1", "p2", "k3"};
    for (int i = 0; i < k.length; i++) {
      k[i] = map.number(keys[i], DISTORTION).orElse(0);
    }
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new Lens(fx, fy, cx, cy, k[0], k[1], k[2], k[3], k[4]));
  }

  private static List<Slot> slots(YamlMap map, Optional<Station.Kind> kind, Known layouts) {
    boolean fixed = kind.filter(Station.Kind.FIXED::equals).isPresent();
    Optional<YamlValue> value = fixed ? map.required("slots") : map.value("slots");
    if (value.isPresent() && kind.isPresent() && !fixed) {
      value.get().error("a passing station has no slots", "delete slots, or write kind: fixed");
    }
    List<Slot> slots = new ArrayList<>();
    for (YamlValue item : value.map(YamlValue::list).orElse(List.of())) {
      item.map()
          .flatMap(slot -> slot(slot, layouts))
          .ifPresent(
              slot -> {
                if (slots.stream().anyMatch(other -> other.name().equals(slot.name()))) {
                  item.error("the slot \"" + slot.name() + "\" stands twice", "rename one of them");
                }
                slots.add(slot);
              });
    }
    return slots;
  }

  private static void checkInPicture(Station station, YamlMap map) {
    for (Slot slot : station.slots()) {
      slot.cornersPx().stream()
          .filter(corner -> isFarOutside(corner, station))
          .findFirst()
          .ifPresent(
              corner ->
                  map.value("slots").orElseThrow().error(farOutside(slot, corner), MEND_CORNER));
    }
  }

  /** A board may reach out of the picture, but not by half as much as the picture is large. */
  private static boolean isFarOutside(PointPx corner, Station station) {
    double width = station.imageWidthPx();
    double height = station.imageHeightPx();
    return Math.abs(corner.xPx() - width / 2) > width
        || Math.abs(corner.yPx() - height / 2) > height;
  }

  private static String farOutside(Slot slot, PointPx corner) {
    return String.format(
        Locale.ROOT,
        "slot \"%s\" has a corner at %.0f, %.0f px, far outside the picture",
        slot.name(),
        corner.xPx(),
        corner.yPx());
  }

  private static Optional<Slot> slot(YamlMap map, Known layouts) {
    int errorsBefore = map.findings().errors();
    Optional<String> name = map.required("name").flatMap(YamlValue::name);
    Optional<YamlValue> layoutValue = map.required("layout");
    Optional<String> layout = layoutValue.flatMap(YamlValue::text);
    layout
        .filter(layouts::lacks)
        .ifPresent(l -> layoutValue.get().unknown("layout", l, layouts.names()));
    List<PointPx> corners =
        map.required("corners_px").map(StationReader::corners).orElse(List.of());
    Slot.Refine refine = map.choice("refine", Slot.Refine.values()).orElse(Slot.Refine.EDGES);
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new Slot(name.orElseThrow(), layout.orElseThrow(), corners, refine));
  }

  private static List<PointPx> corners(YamlValue value) {
    int errorsBefore = value.findings().errors();
    List<PointPx> corners = new ArrayList<>();
    for (YamlValue item : value.list()) {
      item.numbers(2, PIXEL).ifPresent(xy -> corners.add(new PointPx(xy.get(0), xy.get(1))));
    }
    if (value.findings().errors() > errorsBefore) {
      return corners;
    }
    if (corners.size() != 4) {
      value.error("there are " + corners.size() + " corners", "give four, as [x, y] each");
    } else if (!Corners.areConvexClockwise(corners)) {
      value.error(
          "the corners do not go clockwise round a board",
          "begin at the corner nearest A1 and go clockwise, as the photo shows it");
    }
    return corners;
  }

  private static Duration clockOffset(YamlMap map) {
    Optional<YamlValue> clock = map.value("clock_offset");
    Optional<YamlValue> seconds = map.value("clock_offset_s");
    if (clock.isPresent() && seconds.isPresent()) {
      seconds.get().error("the clock offset stands twice", "keep clock_offset or clock_offset_s");
    }
    return clock
        .map(StationReader::clock)
        .or(() -> seconds.map(s -> seconds(s.number(OFFSET_S).orElse(0))))
        .orElse(Duration.ZERO);
  }

  private static Duration seconds(double seconds) {
    return Duration.ofMillis(Math.round(seconds * 1000));
  }

  private static Duration clock(YamlValue value) {
    Optional<String> text = value.text();
    Matcher matcher = OFFSET.matcher(text.orElse(""));
    if (!matcher.matches()) {
      text.ifPresent(
          found ->
              value.error(
                  "\"" + found + "\" is not a clock offset",
                  "write what to add to the camera's clock as hours:minutes:seconds, as in"
                      + " \"+00:03:20\""));
      return Duration.ZERO;
    }
    long s = matcher.group(4) == null ? 0 : Long.parseLong(matcher.group(4).substring(1));
    long all = Long.parseLong(matcher.group(2)) * 3600 + Long.parseLong(matcher.group(3)) * 60 + s;
    return Duration.ofSeconds(matcher.group(1).equals("-") ? -all : all);
  }
}
