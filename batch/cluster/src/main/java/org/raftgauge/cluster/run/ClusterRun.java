// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.run;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.storage.StorageLevel;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.ProgramVersion;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.dataset.RunStamp;
import org.raftgauge.cluster.evening.JudgeEvenings;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.first.FirstPass;
import org.raftgauge.cluster.first.ListPhotos;
import org.raftgauge.cluster.second.SecondPass;
import org.raftgauge.cluster.second.WriteReports;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.report.PhotosTable;
import org.raftgauge.core.report.RaftsTable;
import org.raftgauge.core.report.SitesTable;
import org.raftgauge.cluster.rows.ReportColumns;

/** A run on a cluster: from photos and a crop book to a dataset. */
public final class ClusterRun {
  private static final DateTimeFormatter ID =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmssSSS", Locale.ROOT);

  private final SparkSession spark;
  private final Request request;
  private final PrintStream say;

  /** Which evenings are judged. */
  public enum Evenings {
    /** The latest evening of the run's photos, as a run on a folder does. */
    LATEST,
    /** Every evening of the run's photos. */
    ALL,
    /** None. */
    NONE
  }

  /**
   * What is asked for.
   *
   * @param photos folder or URI of the photos
   * @param listing file that lists them, where given
   * @param book folder of the crop book, on this machine
   * @param out folder or URI of the dataset
   * @param rule how photos are dealt out
   * @param evenings which evenings are judged
   * @param startedAt when it was asked for
   */
  public record Request(
      String photos,
      Optional<Path> listing,
      Path book,
      String out,
      FirstPass.Rule rule,
      Evenings evenings,
      OffsetDateTime startedAt) {}

  /**
   * What a run came to.
   *
   * @param photos number of photos by status
   * @param measured photos measured by this run
   * @param known photos that an earlier run had measured
   * @param evenings evenings judged
   */
  public record Summary(
      Map<String, Long> photos, long measured, long known, Collection<LocalDate> evenings) {}

  /**
   * Prepares.
   *
   * @param spark the session
   * @param request what is asked for
   * @param say told how it gets on
   */
  public ClusterRun(SparkSession spark, Request request, PrintStream say) {
    this.spark = spark;
    this.request = request;
    this.say = say;
  }

  /**
   * Runs.
   *
   * @return what it came to
   * @throws InputException if the request cannot be met
   * @throws IOException if the run fails; what it measured is kept for the next
   */
  public Summary run() throws InputException, IOException {
    Configuration settings = spark.sparkContext().hadoopConfiguration();
    ListPhotos.Photos found = new ListPhotos(settings).in(request.photos(), request.listing());
    found.problems().forEach(say::println);
    if (found.photos().isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  "PHOTOS " + request.photos(),
                  "holds no photos",
                  "give the place that holds the photos: JPEG, PNG or TIFF")));
    }
    DatasetFolder dataset = DatasetFolder.open(request.out(), settings);
    RunStamp stamp = stamp();
    dataset.clear(stamp.run());
    Broadcast<BookFiles> book =
        JavaSparkContext.fromSparkContext(spark.sparkContext())
            .broadcast(BookFiles.of(request.book()));
    say.println(found.photos().size() + " photos");
    FirstPass.Outcome first =
        new FirstPass(spark, dataset, stamp, request.rule()).measure(found.photos(), book);
    long known = first.known().size();
    say.println("measured " + (found.photos().size() - known) + ", known " + known);
    Dataset<Row> all = FirstPass.measures(spark, dataset, stamp.code());
    SecondPass.Outcome second = SecondPass.settle(all, first, book);
    Dataset<Row> rows = second.rows().persist(StorageLevel.MEMORY_AND_DISK());
    new WriteReports(dataset, stamp).write(rows, headers());
    Map<String, Long> statuses = statuses(rows);
    rows.unpersist();
    Farm farm = book.value().open().book().farm();
    Collection<LocalDate> evenings = evenings(second.photos().filter("in_run"), book, farm);
    if (!evenings.isEmpty()) {
      Dataset<Row> judged =
          JudgeEvenings.judge(second, evenings, book).persist(StorageLevel.MEMORY_AND_DISK());
      new WriteReports(dataset, stamp).write(judged, JudgeEvenings.headers());
      judged.unpersist();
    }
    dataset.publish(stamp);
    dataset.clear(stamp.run());
    return new Summary(statuses, found.photos().size() - known, known, evenings);
  }

  private RunStamp stamp() {
    ProgramVersion version = ProgramVersion.current();
    return new RunStamp(
        ID.format(request.startedAt()) + "-" + ProcessHandle.current().pid(),
        request.startedAt().toString(),
        version.version(),
        version.measuringCode());
  }

  private static Map<String, List<String>> headers() {
    Map<String, List<String>> headers = new LinkedHashMap<>();
    headers.put("photos", ReportColumns.cells(PhotosTable.csv(List.of())).header());
    headers.put("sites", ReportColumns.cells(SitesTable.csv(List.of())).header());
    headers.put("rafts", ReportColumns.cells(RaftsTable.csv(List.of())).header());
    return headers;
  }

  private static Map<String, Long> statuses(Dataset<Row> rows) {
    int status = ReportColumns.cells(PhotosTable.csv(List.of())).header().indexOf("status");
    Map<String, Long> statuses = new TreeMap<>();
    rows.filter("report = 'photos'")
        .selectExpr("cells[" + status + "] as status")
        .groupBy("status")
        .count()
        .collectAsList()
        .forEach(row -> statuses.put(row.getString(0), row.getLong(1)));
    return statuses;
  }

  private Collection<LocalDate> evenings(
      Dataset<Row> photos, Broadcast<BookFiles> book, Farm farm) {
    if (request.evenings() == Evenings.NONE) {
      return List.of();
    }
    NavigableSet<LocalDate> evenings = new TreeSet<>();
    photos
        .filter("size(measured.measure.rafts) > 0")
        .selectExpr("measured.measure.takenAt")
        .map((MapFunction<Row, String>) row -> evening(row, book), Encoders.STRING())
        .distinct()
        .collectAsList()
        .forEach(day -> evenings.add(LocalDate.parse(day)));
    if (request.evenings() == Evenings.ALL || evenings.isEmpty()) {
      return evenings;
    }
    // A photo dated in the future is measured, and never becomes the run's evening.
    LocalDate last = farm.evening(request.startedAt().plusDays(1));
    LocalDate latest = evenings.floor(last);
    return List.of(latest == null ? evenings.last() : latest);
  }

  private static String evening(Row row, Broadcast<BookFiles> book) {
    OffsetDateTime at = OffsetDateTime.parse(row.getString(0));
    return book.value().open().book().farm().evening(at).toString();
  }
}
