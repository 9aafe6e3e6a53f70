// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.evening;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.FlatMapFunction;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.first.Stored;
import org.raftgauge.cluster.rows.RecordRows;
import org.raftgauge.cluster.second.ReportRow;
import org.raftgauge.cluster.second.SecondPass;

/**
 * Verdicts, growth curves, worklists and forecasts of many evenings: each photo goes to the blocks
 * of evenings whose plantings it tells of, each block is judged by one task.
 */
public final class JudgeEvenings {
  /** Evenings a block: photos of some six weeks are sent once for a week of evenings. */
  private static final int BLOCK = 7;

  /** The column after those of {@link Stored}. */
  private static final int BLOCK_COLUMN = 3;

  private JudgeEvenings() {}

  /**
   * Judges.
   *
   * @param second the photos and what the charts of the stations say
   * @param evenings to be judged
   * @param book the book
   * @return rows of the reports, {@link ReportRow}
   */
  public static Dataset<Row> judge(
      SecondPass.Outcome second, Collection<LocalDate> evenings, Broadcast<BookFiles> book) {
    Dataset<Row> photos = second.photos();
    JavaSparkContext context =
        JavaSparkContext.fromSparkContext(photos.sparkSession().sparkContext());
    Broadcast<Blocks> blocks = context.broadcast(Blocks.of(evenings, book.value().open(), BLOCK));
    StructType sent =
        RecordRows.of(Stored.class).schema().add("block", DataTypes.IntegerType, false);
    return photos
        .flatMap((FlatMapFunction<Row, Row>) row -> sent(row, blocks.value()), Encoders.row(sent))
        .groupByKey((MapFunction<Row, Integer>) row -> row.getInt(BLOCK_COLUMN), Encoders.INT())
        .flatMapGroups(
            new JudgeTask(book, second.doubts(), blocks),
            Encoders.row(RecordRows.of(ReportRow.class).schema()));
  }

  /** Returns the columns of the reports, by name. */
  public static Map<String, List<String>> headers() {
    return EveningReports.headers();
  }

  /**
   * Names the reports of evenings, with or without rows.
   *
   * @param evenings judged
   * @param farm the book
   * @return forecasts among them where something was expected to stand
   */
  public static Set<String> names(Collection<LocalDate> evenings, Farm farm) {
    Set<String> names = new TreeSet<>();
    for (LocalDate evening : evenings) {
      boolean ahead = !farm.asOf(evening).expectedRafts(evening).isEmpty();
      names.addAll(
          ahead ? EveningReports.headers().keySet() : Set.of("verdicts", "curves", "worklist"));
    }
    return names;
  }

  private static Iterator<Row> sent(Row row, Blocks blocks) {
    Row measure = row.<Row>getAs("measured").getAs("measure");
    LocalDate day = OffsetDateTime.parse(measure.<String>getAs("takenAt")).toLocalDate();
    List<Row> rafts = measure.getList(measure.fieldIndex("rafts"));
    List<String> names =
        rafts.stream().map(r -> r.<String>getAs("raft")).filter(Objects::nonNull).toList();
    List<Row> sent = new ArrayList<>();
    boolean corrected = blocks.isCorrected(measure.getAs("sha256"));
    for (int block : corrected ? blocks.all() : blocks.needing(day, names)) {
      sent.add(RowFactory.create(row.get(0), row.get(1), row.get(2), block));
    }
    return sent.iterator();
  }
}
