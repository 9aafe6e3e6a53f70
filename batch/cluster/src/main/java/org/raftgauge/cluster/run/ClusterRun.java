// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.run;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
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
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.storage.StorageLevel;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.ProgramVersion;
import org.raftgauge.cluster.dataset.Commit;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.dataset.RunStamp;
import org.raftgauge.cluster.evening.JudgeEvenings;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.first.FirstPass;
import org.raftgauge.cluster.first.ListPhotos;
import org.raftgauge.cluster.rows.ReportColumns;
import org.raftgauge.cluster.second.ReportRow;
import org.raftgauge.cluster.second.SecondPass;
import org.raftgauge.cluster.second.WriteReports;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.report.PhotosTable;
import org.raftgauge.core.report.RaftsTable;
import org.raftgauge.core.report.SitesTable;

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
    SecondPass.Outcome second =
        SecondPass.settle(all, dataset.commit().roundsOf(stamp.code()).size(), first, book);
    Dataset<Row> rows = second.rows().persist(StorageLevel.MEMORY_AND_DISK());
    new WriteReports(dataset, stamp).write(rows, headers());
    Counts counts = counts(rows);
    rows.unpersist();
    Farm farm = book.value().open().book().farm();
    Collection<LocalDate> evenings = wanted(counts.evenings(), farm);
    if (!evenings.isEmpty()) {
      Dataset<Row> judged =
          JudgeEvenings.judge(second, evenings, book).persist(StorageLevel.MEMORY_AND_DISK());
      new WriteReports(dataset, stamp).write(judged, JudgeEvenings.headers());
      judged.unpersist();
    }
    List<String> names = new ArrayList<>(headers().keySet());
    names.addAll(JudgeEvenings.names(evenings, farm));
    List<String> days = evenings.stream().map(LocalDate::toString).toList();
    dataset.publish(stamp, new Commit.Reports(names, days));
    dataset.clear(stamp.run());
    return new Summary(counts.statuses(), found.photos().size() - known, known, evenings);
  }

  private RunStamp stamp() {
    ProgramVersion version = ProgramVersion.current();
    return new RunStamp(
        ID.format(request.startedAt()) + "-" + ProcessHandle.current().pid(),
        request.startedAt().toString(),
        version.version(),
        version.measuringCode());
  }

  /** Returns the columns of the reports on photos, by name. */
  static Map<String, List<String>> headers() {
    Map<String, List<String>> headers = new LinkedHashMap<>();
    headers.put("photos", ReportColumns.cells(PhotosTable.csv(List.of())).header());
    headers.put("sites", ReportColumns.cells(SitesTable.csv(List.of())).header());
    headers.put("rafts", ReportColumns.cells(RaftsTable.csv(List.of())).header());
    return headers;
  }

  /** Counts the photos of each status, and the evenings of those that show rafts. */
  private static Counts counts(Dataset<Row> rows) {
    List<String> header = ReportColumns.cells(PhotosTable.csv(List.of())).header();
    Map<String, Long> statuses = new TreeMap<>();
    NavigableSet<LocalDate> evenings = new TreeSet<>();
    rows.filter("report = 'photos'")
        .selectExpr(
            "cells[" + header.indexOf("status") + "] as status",
            "day",
            "cells[" + header.indexOf("rafts") + "] <> '' as shows")
        .groupBy("status", "day", "shows")
        .count()
        .collectAsList()
        .forEach(
            row -> {
              statuses.merge(row.getString(0), row.getLong(3), Long::sum);
              if (row.getBoolean(2) && !row.getString(1).equals(ReportRow.UNDATED)) {
                evenings.add(LocalDate.parse(row.getString(1)));
              }
            });
    return new Counts(statuses, evenings);
  }

  private record Counts(Map<String, Long> statuses, NavigableSet<LocalDate> evenings) {}

  private Collection<LocalDate> wanted(NavigableSet<LocalDate> evenings, Farm farm) {
    if (request.evenings() == Evenings.NONE || evenings.isEmpty()) {
      return List.of();
    }
    if (request.evenings() == Evenings.ALL) {
      return evenings;
    }
    // A photo dated in the future is measured, and never becomes the run's evening.
    LocalDate latest = evenings.floor(farm.evening(request.startedAt().plusDays(1)));
    return List.of(latest == null ? evenings.last() : latest);
  }
}
