// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.raftgauge.cluster.dataset.CountRows;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.dataset.RunStamp;
import org.raftgauge.cluster.rows.ReportColumns;

/** Writes report rows as Parquet, partitioned by crop cycle and day. */
public final class WriteReports {
  private final DatasetFolder dataset;
  private final RunStamp stamp;

  /**
   * Prepares.
   *
   * @param dataset gets the files
   * @param stamp the run
   */
  public WriteReports(DatasetFolder dataset, RunStamp stamp) {
    this.dataset = dataset;
    this.stamp = stamp;
  }

  /**
   * Writes, and counts what the store then holds; nothing is published yet.
   *
   * @param rows {@link ReportRow}s, of any reports, kept at hand
   * @param headers the columns of each report to write, by its name
   * @throws IOException if the store holds fewer rows than were written
   */
  public void write(Dataset<Row> rows, Map<String, List<String>> headers) throws IOException {
    headers.forEach(
        (report, header) ->
            typed(rows.filter(functions.col("report").equalTo(report)), report, header)
                .repartition(functions.col("cycle"), functions.col("day"))
                .write()
                .mode(SaveMode.ErrorIfExists)
                .partitionBy("cycle", "day")
                .parquet(dataset.table(stamp.run(), report)));
    Map<String, Long> written = new HashMap<>();
    rows.groupBy("report")
        .count()
        .collectAsList()
        .forEach(row -> written.put(row.getString(0), row.getLong(1)));
    for (Map.Entry<String, List<String>> each : headers.entrySet()) {
      CountRows.check(
          rows.sparkSession(),
          columns(each.getKey(), each.getValue()),
          dataset.table(stamp.run(), each.getKey()),
          written.getOrDefault(each.getKey(), 0L));
    }
  }

  private static Dataset<Row> typed(Dataset<Row> rows, String report, List<String> header) {
    StructType columns = ReportColumns.schema(report, header);
    return rows.map(
        (MapFunction<Row, Row>) row -> typed(row, columns), Encoders.row(columns(report, header)));
  }

  private static StructType columns(String report, List<String> header) {
    return ReportColumns.schema(report, header)
        .add("place", DataTypes.IntegerType, false)
        .add("cycle", DataTypes.StringType, false)
        .add("day", DataTypes.StringType, false);
  }

  private static Row typed(Row row, StructType columns) {
    List<String> cells = row.getList(row.fieldIndex("cells"));
    Object[] typed = new Object[columns.size() + 3];
    for (int i = 0; i < columns.size(); i++) {
      typed[i] = ReportColumns.typed(cells.get(i), columns.apply(i).dataType());
    }
    typed[columns.size()] = row.getAs("place");
    typed[columns.size() + 1] = row.getAs("cycle");
    typed[columns.size() + 2] = row.getAs("day");
    return RowFactory.create(typed);
  }
}
