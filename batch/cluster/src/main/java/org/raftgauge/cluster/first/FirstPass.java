// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeSet;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.raftgauge.cluster.dataset.Commit;
import org.raftgauge.cluster.dataset.CountRows;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.dataset.RunStamp;
import org.raftgauge.cluster.rows.RecordRows;

/**
 * The first pass on a cluster: measures what no earlier run measured, some photos a round, and adds
 * each round to the dataset, so that a run which is stopped loses one round at most.
 */
public final class FirstPass {
  private final SparkSession spark;
  private final DatasetFolder dataset;
  private final RunStamp stamp;
  private final Rule rule;

  /**
   * How photos are dealt out.
   *
   * @param partitions of a round; by the photos' sizes where empty
   * @param partitionBytes most bytes a partition, where the number is not given
   * @param roundPhotos photos a round, 1 or more
   */
  public record Rule(OptionalInt partitions, long partitionBytes, int roundPhotos) {}

  /**
   * Which measures a run's photos have.
   *
   * @param rounds places in the commit of the rounds that this run added
   * @param known the places of the earlier rounds that hold a photo, by its path
   */
  public record Outcome(List<Integer> rounds, Map<String, Integer> known) {}

  /**
   * Prepares.
   *
   * @param spark the session
   * @param dataset gets the rounds
   * @param stamp the run
   * @param rule how photos are dealt out
   */
  public FirstPass(SparkSession spark, DatasetFolder dataset, RunStamp stamp, Rule rule) {
    this.spark = spark;
    this.dataset = dataset;
    this.stamp = stamp;
    this.rule = rule;
  }

  /**
   * Measures.
   *
   * @param photos the run's photos
   * @param book the book
   * @return which measures they have
   * @throws IOException if the dataset cannot be written
   */
  public Outcome measure(List<Listed> photos, Broadcast<BookFiles> book) throws IOException {
    Known earlier =
        dataset.commit().roundsOf(stamp.code()).isEmpty()
            ? Known.nothing()
            : new Known(measures(spark, dataset, stamp.code()));
    Known.Split split = earlier.split(photos, book);
    List<Integer> rounds = new ArrayList<>();
    Map<String, Integer> known = new HashMap<>(split.known());
    for (int from = 0; from < split.wanted().size(); from += rule.roundPhotos()) {
      int to = Math.min(split.wanted().size(), from + rule.roundPhotos());
      String folder = stamp.run() + "-" + rounds.size();
      round(split.wanted().subList(from, to), book, dataset.round(folder));
      dataset.addRound(stamp, folder);
      rounds.add(dataset.commit().rounds().size() - 1);
      if (!earlier.isEmpty()) {
        marked(dataset.round(folder), earlier, known);
      }
    }
    return new Outcome(rounds, known);
  }

  private void round(List<Listed> photos, Broadcast<BookFiles> book, String folder)
      throws IOException {
    JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
    int count =
        rule.partitions()
            .orElseGet(
                () -> Slices.count(photos, context.defaultParallelism(), rule.partitionBytes()));
    List<List<Listed>> slices = new ArrayList<>();
    Slices.of(photos, count).forEach(slice -> slices.add(new ArrayList<>(slice)));
    ReadListed read = new ReadListed(context.hadoopConfiguration());
    context.setJobDescription("measure " + photos.size() + " photos");
    JavaRDD<Row> rows =
        context.parallelize(slices, slices.size()).mapPartitions(new MeasureTask(book, read));
    StructType columns = RecordRows.of(Stored.class).schema();
    spark.createDataFrame(rows, columns).write().parquet(folder);
    CountRows.check(spark, columns, folder, photos.size());
    context.setJobDescription("");
  }

  /** Finds the photos of a round whose bytes an earlier one holds. */
  private void marked(String folder, Known earlier, Map<String, Integer> known) {
    spark
        .read()
        .schema(RecordRows.of(Stored.class).schema())
        .parquet(folder)
        .filter("measured.source = 'HISTORY'")
        .selectExpr("measured.measure.photo", "measured.settings")
        .toLocalIterator()
        .forEachRemaining(
            row -> known.put(row.getString(0), earlier.round(row.getString(0), row.getString(1))));
  }

  /**
   * Returns the measures of a dataset.
   *
   * @param spark the session
   * @param dataset the dataset
   * @param code hash of the measuring program; what others measured is left out
   * @return rows of {@link Stored} with the place of their {@code round}
   */
  public static Dataset<Row> measures(SparkSession spark, DatasetFolder dataset, String code) {
    Commit commit = dataset.commit();
    return commit.roundsOf(code).entrySet().stream()
        .map(
            round ->
                spark
                    .read()
                    .schema(RecordRows.of(Stored.class).schema())
                    .parquet(dataset.round(round.getValue()))
                    .withColumn("round", functions.lit(round.getKey())))
        .reduce(Dataset::union)
        .orElseGet(
            () ->
                spark.createDataFrame(
                    List.of(),
                    RecordRows.of(Stored.class)
                        .schema()
                        .add("round", DataTypes.IntegerType, false)));
  }

  /**
   * Returns the measures of a run's photos.
   *
   * @param all the dataset's measures
   * @param outcome which of them the run's photos have
   * @return the same columns and {@code known}, whether an earlier run measured the photo
   */
  public static Dataset<Row> ofRun(Dataset<Row> all, Outcome outcome) {
    Object[] rounds = new TreeSet<>(outcome.rounds()).toArray();
    Dataset<Row> fresh =
        all.filter(functions.col("round").isin(rounds))
            .filter("measured.source <> 'HISTORY'")
            .withColumn("known", functions.lit(false));
    if (outcome.known().isEmpty()) {
      return fresh;
    }
    Dataset<Row> places = places(all.sparkSession(), outcome.known());
    Dataset<Row> known =
        all.filter("measured.source = 'FRESH'")
            .join(
                places,
                functions
                    .expr("measured.measure.photo = place_photo")
                    .and(functions.expr("round = place_round")))
            .drop("place_photo", "place_round")
            .withColumn("known", functions.lit(true));
    return fresh.union(known);
  }

  private static Dataset<Row> places(SparkSession spark, Map<String, Integer> known) {
    List<Row> rows = new ArrayList<>();
    known.forEach((photo, round) -> rows.add(org.apache.spark.sql.RowFactory.create(photo, round)));
    return spark.createDataFrame(
        rows,
        DataTypes.createStructType(
            List.of(
                DataTypes.createStructField("place_photo", DataTypes.StringType, false),
                DataTypes.createStructField("place_round", DataTypes.IntegerType, false))));
  }
}
