// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.raftgauge.core.measure.LightField;
import org.raftgauge.core.measure.PhotoWitness;
import org.raftgauge.core.plane.CameraShift;
import org.raftgauge.core.plane.EdgeBlur;

/** The columns of what a photo says of its station. */
final class WitnessColumns {

  private WitnessColumns() {}

  /** Writes them, in the order of the statement. */
  static void write(SqlRow row, PhotoWitness witness) throws SQLException {
    row.number(part(witness.shift(), CameraShift::xPx))
        .number(part(witness.shift(), CameraShift::yPx))
        .number(part(witness.shift(), CameraShift::turnDeg))
        .number(witness.blur().blurPx())
        .text(cells(witness.blur().cells()))
        .number(witness.hazeFraction())
        .number(part(witness.light(), LightField::level))
        .number(part(witness.light(), LightField::acrossLn))
        .number(part(witness.light(), LightField::downLn))
        .number(part(witness.light(), LightField::vignettingFraction))
        .number(witness.pairRowsPx());
  }

  /** Reads them. */
  static PhotoWitness read(ResultSet row) throws SQLException {
    Optional<CameraShift> shift =
        number(row, "shift_right_px").isEmpty()
            ? Optional.empty()
            : Optional.of(
                new CameraShift(
                    row.getDouble("shift_right_px"),
                    row.getDouble("shift_down_px"),
                    row.getDouble("turn_deg")));
    Optional<LightField> light =
        number(row, "board_light").isEmpty()
            ? Optional.empty()
            : Optional.of(
                new LightField(
                    row.getDouble("board_light"),
                    row.getDouble("light_across_ln"),
                    row.getDouble("light_down_ln"),
                    row.getDouble("vignetting_fraction")));
    return new PhotoWitness(
        shift,
        new EdgeBlur(number(row, "edge_blur_px"), cells(row.getString("edge_blur_cells_px"))),
        number(row, "haze_fraction"),
        light,
        number(row, "pair_rows_px"));
  }

  /** Reads the blur of the parts of a picture. */
  static List<OptionalDouble> cells(String text) {
    return text.isEmpty()
        ? List.of()
        : Arrays.stream(text.split(";", -1)).map(WitnessColumns::cell).toList();
  }

  private static OptionalDouble cell(String text) {
    return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
  }

  private static String cells(List<OptionalDouble> cells) {
    return cells.stream()
        .map(c -> c.isPresent() ? Double.toString(c.getAsDouble()) : "")
        .collect(Collectors.joining(";"));
  }

  private static <T> OptionalDouble part(Optional<T> whole, ToDoubleFunction<T> part) {
    return whole.stream().mapToDouble(part).findFirst();
  }

  private static OptionalDouble number(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
