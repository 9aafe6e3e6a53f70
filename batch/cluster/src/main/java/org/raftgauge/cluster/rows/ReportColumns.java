// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.rows;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/**
 * The columns of a report as typed columns: numbers as decimals of exactly the report's digits, so
 * that the CSV's bytes come back. A column that is not known here stands as text.
 */
public final class ReportColumns {
  private static final int PRECISION = 18;

  /** Decimals of the columns of numbers, by table and column. */
  private static final Map<String, Map<String, Integer>> DECIMALS =
      Map.of(
          "photos",
          decimals(
              "4 mm_per_px exposure_clipped_fraction haze_fraction",
              "3 sharpness light_cast turn_deg edge_blur_px board_light light_across_ln"
                  + " light_down_ln vignetting_fraction pair_rows_px",
              "2 pose_error_mm shift_right_px shift_down_px",
              "1 camera_height_mm"),
          "sites",
          decimals(
              "4 parallax_factor",
              "3 dat shared_outline_fraction solidity pale_fraction dead_fraction quality",
              "2 projected_area_cm2 projected_area_se_cm2 visible_area_cm2",
              "1 height_mm equivalent_diameter_mm largest_diameter_mm perimeter_mm offset_x_mm"
                  + " offset_y_mm lab_l lab_a lab_b"),
          "rafts",
          decimals(
              "4 canopy_cover area_cv mm_per_px repeatability_ln",
              "3 dat quality",
              "2 total_area_cm2 median_area_cm2 p10_area_cm2 p90_area_cm2 leftover_canopy_cm2"
                  + " pose_error_mm",
              "0 sites_planted sites_empty sites_closed sites_held"));

  private static final Set<String> FLAGS = Set.of("closed");

  private ReportColumns() {}

  private static Map<String, Integer> decimals(String... lines) {
    Map<String, Integer> decimals = new HashMap<>();
    for (String line : lines) {
      String[] words = line.split(" ", -1);
      for (int i = 1; i < words.length; i++) {
        decimals.put(words[i], Integer.parseInt(words[0]));
      }
    }
    return decimals;
  }

  /**
   * The rows of a report as text.
   *
   * @param header names of the columns
   * @param rows cells as they stand in the file, before quoting
   */
  public record Cells(List<String> header, List<List<String>> rows) {}

  /**
   * Reads a report as written.
   *
   * @param csv its text
   * @return header and rows
   */
  public static Cells cells(String csv) {
    try (CSVParser parser = CSVParser.parse(new StringReader(csv), CSVFormat.RFC4180)) {
      List<List<String>> rows = new ArrayList<>();
      for (CSVRecord row : parser) {
        rows.add(row.toList());
      }
      return new Cells(rows.get(0), rows.subList(1, rows.size()));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a text in memory can always be read
    }
  }

  /**
   * Returns the typed columns of a report.
   *
   * @param table its name, such as {@code sites}
   * @param header names of the columns
   * @return the columns in their order; any cell may be empty
   */
  public static StructType schema(String table, List<String> header) {
    return DataTypes.createStructType(
        header.stream()
            .map(column -> DataTypes.createStructField(column, type(table, column), true))
            .toArray(StructField[]::new));
  }

  private static DataType type(String table, String column) {
    Integer decimals = DECIMALS.getOrDefault(table, Map.of()).get(column);
    if (decimals != null) {
      return DataTypes.createDecimalType(PRECISION, decimals);
    }
    return FLAGS.contains(column) ? DataTypes.BooleanType : DataTypes.StringType;
  }

  /**
   * Makes a typed cell.
   *
   * @param text of the report's cell
   * @param type of its column
   * @return a value of the type; null where the cell is empty
   * @throws IllegalArgumentException if the number has other digits than its column
   */
  public static Object typed(String text, DataType type) {
    if (text.isEmpty()) {
      return null;
    }
    if (type instanceof org.apache.spark.sql.types.DecimalType decimal) {
      BigDecimal number = new BigDecimal(text);
      if (number.scale() != decimal.scale()) {
        throw new IllegalArgumentException(
            "\"" + text + "\" must have " + decimal.scale() + " digits after the dot");
      }
      return number;
    }
    return type.equals(DataTypes.BooleanType) ? (Object) Boolean.valueOf(text) : text;
  }

  /**
   * Returns a cell's text in a report.
   *
   * @param value a value of {@link #typed}; null for an empty cell
   * @return the same text as before
   */
  public static String text(Object value) {
    if (value == null) {
      return "";
    }
    return value instanceof BigDecimal number ? number.toPlainString() : value.toString();
  }
}
