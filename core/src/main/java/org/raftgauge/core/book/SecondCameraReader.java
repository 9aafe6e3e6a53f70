// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.table.NumberRange;

/** Reads the second camera of a station. */
final class SecondCameraReader {
  private static final NumberRange TURN = NumberRange.from(-180, 180);
  private static final NumberRange SHIFT = NumberRange.from(-5_000, 5_000);

  /** Two lenses nearer than this are one camera: nothing can be told from them. */
  private static final double LEAST_BASELINE_MM = 5;

  private static final String PAIR = "calibrate it by: raftgauge station pair";

  private SecondCameraReader() {}

  /** Reads it; nothing where there is none or something in it is wrong. */
  static Optional<SecondCamera> read(YamlMap station, int cameras) {
    Optional<YamlValue> value = station.value("second_camera");
    if (cameras == 2 && value.isEmpty()) {
      station
          .value("cameras")
          .ifPresent(c -> c.error("there is no second_camera beside it", PAIR + ", or write 1"));
      return Optional.empty();
    }
    if (cameras != 2 && value.isPresent()) {
      value.get().error("the station has one camera", "write cameras: 2, or delete second_camera");
      return Optional.empty();
    }
    return value.flatMap(YamlValue::map).flatMap(SecondCameraReader::camera);
  }

  private static Optional<SecondCamera> camera(YamlMap map) {
    int errorsBefore = map.findings().errors();
    SecondCamera.Sees sees =
        map.choice("sees", SecondCamera.Sees.values()).orElse(SecondCamera.Sees.PHOTO);
    Optional<String> mark = map.requiredText("file_mark");
    String firstMark = map.text("first_file_mark").orElse("");
    int width = map.requiredWhole("image_width_px", StationReader.IMAGE);
    int height = map.requiredWhole("image_height_px", StationReader.IMAGE);
    Optional<Lens> lens =
        map.requiredMap("lens").flatMap(l -> StationReader.lens(l, width, height));
    Optional<List<Double>> turn = three(map, "turn_deg", TURN);
    Optional<List<Double>> shift = three(map, "shift_mm", SHIFT);
    map.finish();
    if (map.findings().errors() > errorsBefore) {
      return Optional.empty();
    }
    SecondCamera camera =
        new SecondCamera(
            sees,
            mark.orElseThrow(),
            firstMark,
            width,
            height,
            lens.orElseThrow(),
            turn.orElseThrow(),
            shift.orElseThrow());
    return apart(camera, map) ? Optional.of(camera) : Optional.empty();
  }

  private static Optional<List<Double>> three(YamlMap map, String key, NumberRange range) {
    return map.required(key).flatMap(value -> value.numbers(3, range));
  }

  private static boolean apart(SecondCamera camera, YamlMap map) {
    boolean together =
        camera.sees() == SecondCamera.Sees.PHOTO && camera.baselineMm() < LEAST_BASELINE_MM;
    if (together) {
      map.value("shift_mm")
          .orElseThrow()
          .error("the cameras stand " + camera.baselineMm() + " mm apart", PAIR);
    }
    return !together;
  }
}
