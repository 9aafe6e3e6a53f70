// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.util.List;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.FilterFunction;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.expressions.Window;
import org.apache.spark.sql.functions;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.first.FirstPass;
import org.raftgauge.cluster.rows.RecordRows;

/**
 * The second pass on a cluster: charts each station, then settles each group of rafts. The steps
 * are those of a run on a folder ({@link org.raftgauge.batch.run.SettleRafts}); only who does what
 * is decided here.
 */
public final class SecondPass {
  private static final String RAFTS =
      "array_distinct(filter(transform(measured.measure.rafts, r -> r.raft), r -> r is not null))";

  /** Rafts without their sites, which are most of a measure. */
  private static final String BARE =
      "transform(measured.measure.rafts, r -> struct(r.raft, r.slot, r.layout, r.poseSource,"
          + " r.poseErrorMm, r.mmPerPx, r.cameraHeightMm, r.halfTurnKnown, r.canopyCover,"
          + " r.leftoverCanopyCm2, slice(r.sites, 1, 0) as sites, r.quality, r.held, r.rulerSites,"
          + " r.notes, slice(r.borders, 1, 0) as borders))";

  private final SparkSession spark;
  private final Broadcast<BookFiles> book;
  private final Dataset<Row> photos;
  private final Dataset<Row> corrected;

  private SecondPass(SparkSession spark, Broadcast<BookFiles> book, Dataset<Row> photos) {
    this.spark = spark;
    this.book = book;
    this.photos = photos;
    this.corrected =
        book.value().open().corrections().isEmpty()
            ? photos
            : photos.mapPartitions(new ApplyCorrections(book), Encoders.row(photos.schema()));
  }

  /**
   * What came of it.
   *
   * @param rows of the reports, {@link ReportRow}
   * @param photos the measures of all photos that may be judged by, uncorrected, each of other
   *     bytes
   * @param doubts what the charts of the stations say, rows of {@link Charted}
   */
  public record Outcome(Dataset<Row> rows, Dataset<Row> photos, Broadcast<List<Row>> doubts) {}

  /**
   * Settles a run's photos.
   *
   * @param all every measure of the dataset by this program
   * @param rounds number of rounds that they are from
   * @param first which of them the run's photos have
   * @param book the book
   * @return rows of the reports
   */
  public static Outcome settle(
      Dataset<Row> all, int rounds, FirstPass.Outcome first, Broadcast<BookFiles> book) {
    Dataset<Row> run = FirstPass.ofRun(all, first).withColumn("in_run", functions.lit(true));
    boolean more = rounds > first.rounds().size();
    Dataset<Row> photos = more ? run.unionByName(earlier(all, run)) : run;
    return new SecondPass(all.sparkSession(), book, photos).outcome();
  }

  /** Returns the photos that earlier runs measured and this one does not have. */
  private static Dataset<Row> earlier(Dataset<Row> all, Dataset<Row> run) {
    Dataset<Row> have = run.selectExpr("measured.measure.photo as have_photo").distinct();
    return all.filter("measured.source = 'FRESH'")
        .withColumn(
            "latest",
            functions
                .max("round")
                .over(Window.partitionBy(functions.expr("measured.measure.photo"))))
        .filter("round = latest")
        .drop("latest")
        .join(have, functions.expr("measured.measure.photo = have_photo"), "left_anti")
        .withColumn("known", functions.lit(true))
        .withColumn("in_run", functions.lit(false));
  }

  private Outcome outcome() {
    Broadcast<Islands> islands = send(islands());
    Dataset<Row> distinct = distinct(islands);
    Broadcast<List<Row>> doubts = send(List.copyOf(charted(distinct)));
    Dataset<Row> rows =
        corrected
            .filter("in_run or measured.measure.status = 'USED'")
            .groupByKey(
                (MapFunction<Row, String>) row -> island(row, islands.value()), Encoders.STRING())
            .flatMapGroups(
                new SettleTask(book, doubts),
                Encoders.row(RecordRows.of(ReportRow.class).schema()));
    return new Outcome(rows, distinct, doubts);
  }

  /**
   * Returns the measured photos that show rafts, of copies the first; what a history would keep.
   */
  private Dataset<Row> distinct(Broadcast<Islands> islands) {
    return photos
        .filter("measured.source <> 'FAILED' and measured.measure.takenAt is not null")
        .filter("measured.measure.status in ('USED', 'HELD')")
        .filter((FilterFunction<Row>) row -> islands.value().isFirst(photo(row), sha256(row)));
  }

  private List<Row> charted(Dataset<Row> distinct) {
    return distinct
        // A chart asks nothing of the sites, which are most of a measure.
        .withColumn(
            "measured", functions.expr("measured").withField("measure.rafts", functions.expr(BARE)))
        .groupByKey((MapFunction<Row, String>) SecondPass::station, Encoders.STRING())
        .flatMapGroups(new ChartTask(book), Encoders.row(RecordRows.of(Charted.class).schema()))
        .collectAsList();
  }

  private static String photo(Row row) {
    return row.<Row>getAs("measured").<Row>getAs("measure").getAs("photo");
  }

  static String sha256(Row row) {
    return row.<Row>getAs("measured").<Row>getAs("measure").getAs("sha256");
  }

  private static String station(Row row) {
    Row measure = row.<Row>getAs("measured").getAs("measure");
    return measure.getAs("station");
  }

  private static String island(Row row, Islands islands) {
    Row measured = row.getAs("measured");
    Row measure = measured.getAs("measure");
    String sha256 = "FAILED".equals(measured.getAs("source")) ? "" : measure.getAs("sha256");
    List<Row> rafts = measure.getList(measure.fieldIndex("rafts"));
    return islands.of(
        measure.getAs("photo"),
        sha256,
        rafts.stream()
            .map(r -> r.<String>getAs("raft"))
            .filter(java.util.Objects::nonNull)
            .distinct()
            .toList());
  }

  private Islands islands() {
    Islands islands = new Islands();
    corrected
        .selectExpr(RAFTS + " as rafts")
        .filter("size(rafts) > 1")
        .distinct()
        .collectAsList()
        .forEach(row -> islands.together(row.getList(0)));
    corrected
        .filter("measured.source <> 'FAILED'")
        .selectExpr(
            "measured.measure.sha256 as sha256",
            "struct(not in_run as later, measured.measure.photo as photo, "
                + RAFTS
                + " as rafts) as place")
        .groupBy("sha256")
        .agg(functions.count("*").as("n"), functions.min("place").as("first"))
        .filter("n > 1")
        .collectAsList()
        .forEach(
            row -> {
              Row first = row.getStruct(2);
              islands.copies(row.getString(0), first.getString(1), first.getList(2));
            });
    return islands;
  }

  private <T> Broadcast<T> send(T what) {
    return JavaSparkContext.fromSparkContext(spark.sparkContext()).broadcast(what);
  }
}
