// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.raftgauge.cluster.dataset.Commit;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.evening.JudgeEvenings;
import org.raftgauge.cluster.rows.ReportColumns;

/** Writes a dataset's reports as CSV files: the bytes that a run on a folder writes. */
public final class ExportDataset {
  /** Columns that only the dataset has, at the end. */
  private static final Set<String> EXTRA = Set.of("place", "cycle", "day");

  private static final Map<String, String> ORDER =
      Map.of(
          "photos", "photo",
          "sites", "raft, photo, slot, place",
          "rafts", "raft, photo, slot, place");

  private final SparkSession spark;
  private final DatasetFolder dataset;

  /**
   * Prepares.
   *
   * @param spark the session
   * @param dataset the dataset
   */
  public ExportDataset(SparkSession spark, DatasetFolder dataset) {
    this.spark = spark;
    this.dataset = dataset;
  }

  /**
   * Exports.
   *
   * @param out a new or empty folder: the tables, of the latest evening too; with several evenings
   *     each one's in {@code evenings}
   * @throws IOException if it cannot be written
   */
  public void to(Path out) throws IOException {
    Files.createDirectories(out);
    Commit.Reports reports = dataset.commit().reports();
    for (String table : reports.names()) {
      Dataset<Row> rows = rows(table);
      if (ORDER.containsKey(table)) {
        write(rows, ORDER.get(table), out.resolve(table + ".csv"));
        continue;
      }
      for (String day : reports.evenings()) {
        Dataset<Row> evening = rows.filter(rows.col("day").equalTo(day));
        if (reports.evenings().size() > 1) {
          Path folder = Files.createDirectories(out.resolve("evenings").resolve(day));
          write(evening, "place", folder.resolve(table + ".csv"));
        }
        if (day.equals(reports.evenings().get(reports.evenings().size() - 1))) {
          write(evening, "place", out.resolve(table + ".csv"));
        }
      }
    }
  }

  /** Returns a report's rows; Parquet of none has no columns, which are then the program's. */
  private Dataset<Row> rows(String table) throws IOException {
    if (dataset.hasRows(table)) {
      return spark.read().parquet(dataset.table(dataset.commit().tables(), table));
    }
    List<String> header = new ArrayList<>(header(table));
    header.addAll(EXTRA);
    return spark.createDataFrame(List.of(), ReportColumns.schema(table, header));
  }

  private static List<String> header(String table) {
    return ORDER.containsKey(table)
        ? ClusterRun.headers().get(table)
        : JudgeEvenings.headers().get(table);
  }

  private static void write(Dataset<Row> rows, String order, Path file) throws IOException {
    List<String> header =
        Stream.of(rows.columns()).filter(column -> !EXTRA.contains(column)).toList();
    Iterator<Row> sorted = rows.orderBy(order(rows, order)).toLocalIterator();
    try (CSVPrinter printer = printer(file)) {
      printer.printRecord(header);
      while (sorted.hasNext()) {
        Row row = sorted.next();
        printer.printRecord(header.stream().map(c -> ReportColumns.text(row.getAs(c))).toList());
      }
    }
  }

  private static CSVPrinter printer(Path file) throws IOException {
    return new CSVPrinter(Files.newBufferedWriter(file, StandardCharsets.UTF_8), CSVFormat.RFC4180);
  }

  private static org.apache.spark.sql.Column[] order(Dataset<Row> rows, String order) {
    return Stream.of(order.split(", ", -1))
        .map(column -> rows.col(column).asc_nulls_first())
        .toArray(org.apache.spark.sql.Column[]::new);
  }
}
