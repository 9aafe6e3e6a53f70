// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Timer;
import java.util.TimerTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.apache.commons.io.FileUtils;
import org.apache.spark.TaskKilled;
import org.apache.spark.scheduler.SparkListener;
import org.apache.spark.scheduler.SparkListenerTaskEnd;
import org.apache.spark.scheduler.SparkListenerTaskStart;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.first.FirstPass;

/** Runs some photos of the sample scenario, bad ones and a copy, on both engines. */
class SparkRunTest {
  private static final Path SAMPLES = Path.of("..", "..", "sample-images");

  @TempDir static Path work;
  private static SparkSession spark;

  @BeforeAll
  static void lay() throws IOException {
    Path photos = Files.createDirectories(work.resolve("photos"));
    for (String name :
        List.of(
            "2026-03-06/2026-03-06_KV-112.jpg",
            "2026-03-12/2026-03-12_KT-03.jpg",
            "2026-03-14/2026-03-14_KV-118.jpg")) {
      Path to = photos.resolve(name);
      FileUtils.copyFile(SAMPLES.resolve("photos").resolve(name).toFile(), to.toFile());
    }
    byte[] whole = Files.readAllBytes(photos.resolve("2026-03-06/2026-03-06_KV-112.jpg"));
    Files.write(photos.resolve("copy of KV-112.jpg"), whole);
    Files.write(photos.resolve("2026-03-08_KV-112.jpg"), java.util.Arrays.copyOf(whole, 9000));
    Files.write(photos.resolve("2026-03-10_KV-112.jpg"), new byte[0]);
    Files.writeString(photos.resolve("2026-03-09_KV-121.jpg"), "no photo");
    spark = Session.start(Optional.of("local[2]"));
  }

  @AfterAll
  static void stop() {
    spark.stop();
  }

  @Test
  void rowsAreThoseOfARunOnAFolderByteForByteWhateverIsKilledAndMeasuredOnce() throws Exception {
    Path plain = plain("plain", "book");
    AtomicInteger killed = new AtomicInteger();
    spark.sparkContext().addSparkListener(new KillFirst(killed));

    ClusterRun.Summary first = run("2026-04-01T12:00:00+02:00");
    assertEquals(7, first.measured());
    assertTrue(killed.get() > 0, "the engine says that a task was killed");
    assertSame(plain, export("first"));

    ClusterRun.Summary again = run("2026-04-01T13:00:00+02:00");
    assertEquals(0, again.measured());
    assertEquals(7, again.known());
    // The second run on a folder says of its photos that they are known; so does this.
    assertSame(plain("again", "book"), export("again"));

    // The book of a farm that never measured: after the import its run measures nothing.
    Path book = book("imported");
    DatasetFolder dataset =
        DatasetFolder.read(
            work.resolve("data").toString(), spark.sparkContext().hadoopConfiguration());
    ImportDataset importing = new ImportDataset(spark, dataset);
    assertEquals(new ImportDataset.Outcome(6, 1), importing.into(book, Duration.ZERO, w -> {}));
    assertEquals(new ImportDataset.Outcome(0, 7), importing.into(book, Duration.ZERO, w -> {}));
    assertEquals(
        Files.readString(work.resolve("again/sites.csv")),
        Files.readString(plain("after-import", "imported").resolve("sites.csv")));
    assertEquals(
        Files.readString(work.resolve("again/photos.csv")),
        Files.readString(work.resolve("after-import/photos.csv")));
  }

  @Test
  void correctionsOfTheBookAreObeyedAsInARunOnAFolder() throws Exception {
    plain("uncorrected", "amended");
    amend("move", "2026-03-06/2026-03-06_KV-112.jpg", "--to", "KV-121");
    amend("clock", "2026-03-12/", "--shift", "+26:00");
    amend("exclude", "2026-03-14/2026-03-14_KV-118.jpg");

    // The farm's computer measured the photos before the corrections, and so does the cluster.
    run("2026-04-01T12:00:00+02:00", "cluster-book", "data-amended");
    run("2026-04-01T12:30:00+02:00", "amended", "data-amended");
    Path exported = export("amended", "data-amended");
    assertSame(plain("amended-plain", "amended"), exported);
    String photos = Files.readString(exported.resolve("photos.csv"));
    assertTrue(photos.contains("correction 3"), photos);
    String rafts = Files.readString(exported.resolve("rafts.csv"));
    assertTrue(rafts.contains("moves raft KV-112"), rafts);
    assertTrue(rafts.contains("shifts the time of 2026-03-12"), rafts);
  }

  private static void amend(String... args) {
    List<String> call = new ArrayList<>(List.of("amend"));
    call.addAll(List.of(args));
    call.addAll(List.of("--book", work.resolve("amended").toString(), "--reason", "tried"));
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
    int code =
        Raftgauge.run(
            call.toArray(new String[0]), new BookWorkplace(), new Console(stream, stream, false));
    assertEquals(0, code, () -> said.toString(StandardCharsets.UTF_8));
  }

  private static ClusterRun.Summary run(String startedAt) throws Exception {
    return run(startedAt, "cluster-book", "data");
  }

  private static ClusterRun.Summary run(String startedAt, String book, String data)
      throws Exception {
    return new ClusterRun(
            spark,
            new ClusterRun.Request(
                work.resolve("photos").toString(),
                Optional.empty(),
                book(book),
                work.resolve(data).toString(),
                new FirstPass.Rule(OptionalInt.of(3), 1 << 20, 100),
                ClusterRun.Evenings.LATEST,
                OffsetDateTime.parse(startedAt)),
            new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8))
        .run();
  }

  private static Path export(String name) throws Exception {
    return export(name, "data");
  }

  private static Path export(String name, String data) throws Exception {
    Path out = work.resolve("csv-" + name);
    new ExportDataset(
            spark,
            DatasetFolder.read(
                work.resolve(data).toString(), spark.sparkContext().hadoopConfiguration()))
        .to(out);
    return out;
  }

  private static Path plain(String out, String book) throws IOException {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(said, true, StandardCharsets.UTF_8);
    String[] args = {
      "run",
      work.resolve("photos").toString(),
      "--book",
      book(book).toString(),
      "--out",
      work.resolve(out).toString(),
      "--no-overlays",
      "--quiet"
    };
    int code = Raftgauge.run(args, new BookWorkplace(), new Console(stream, stream, false));
    assertEquals(0, code, () -> said.toString(StandardCharsets.UTF_8));
    return work.resolve(out);
  }

  private static Path book(String name) throws IOException {
    Path book = work.resolve(name);
    if (!Files.exists(book)) {
      Files.createDirectories(book.resolve("stations"));
      try (Stream<Path> files = Files.walk(SAMPLES.resolve("book"), 2)) {
        for (Path file : files.filter(f -> f.toString().matches(".*\\.(yaml|csv)")).toList()) {
          FileUtils.copyFile(
              file.toFile(), book.resolve(SAMPLES.resolve("book").relativize(file)).toFile());
        }
      }
    }
    return book;
  }

  /** Compares every table of a run on a folder. */
  private static void assertSame(Path plain, Path exported) throws IOException {
    int tables = 0;
    try (Stream<Path> files = Files.list(plain)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".csv")).sorted().toList()) {
        assertEquals(
            Files.readString(file),
            Files.readString(exported.resolve(file.getFileName())),
            file.getFileName().toString());
        tables++;
      }
    }
    assertTrue(tables >= 6, tables + " tables");
  }

  /** Kills the first task of the run while it is at a photo. */
  private static final class KillFirst extends SparkListener {
    private final AtomicInteger killed;
    private boolean done;

    KillFirst(AtomicInteger killed) {
      this.killed = killed;
    }

    @Override
    public void onTaskStart(SparkListenerTaskStart start) {
      if (!done) {
        done = true;
        long task = start.taskInfo().taskId();
        TimerTask kill =
            new TimerTask() {
              @Override
              public void run() {
                spark.sparkContext().killTaskAttempt(task, true, "midway");
              }
            };
        new Timer(true).schedule(kill, 300);
      }
    }

    @Override
    public void onTaskEnd(SparkListenerTaskEnd end) {
      if (end.reason() instanceof TaskKilled) {
        killed.incrementAndGet();
      }
    }
  }
}
