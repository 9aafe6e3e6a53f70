// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.raftgauge.batch.desk.Desk;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.core.problem.InputException;

/** Watches until Ctrl-C, which waits until the photo at hand is kept. */
final class WatchUntilStopped {
  /** Longest wait for a photo at hand when a watch is stopped. */
  private static final long STOP_S = 20;

  private WatchUntilStopped() {}

  /**
   * Watches.
   *
   * @param job what is watched
   * @param desk where its results are shown, if anywhere; closed at the end
   * @param console where to speak
   */
  static void run(Watch.Job job, Optional<Desk> desk, Console console)
      throws InputException, IOException {
    CountDownLatch ended = new CountDownLatch(1);
    try (WatchScreen screen = new WatchScreen(console)) {
      Watch watching = new Watch(shown(job, desk), screen);
      Runtime.getRuntime()
          .addShutdownHook(new Thread(() -> stop(watching, ended), "stop watching"));
      desk.ifPresent(open -> screen.reportAt(open.address()));
      WarmUp.inBackground();
      watching.run();
    } finally {
      desk.ifPresent(Desk::close);
      ended.countDown();
    }
  }

  /** Returns the same job whose results are shown at the desk too. */
  private static Watch.Job shown(Watch.Job job, Optional<Desk> desk) {
    return new Watch.Job(
        job.photos(),
        job.workplace(),
        job.open(),
        job.arrival(),
        () -> {
          Path folder = job.publish().now();
          desk.ifPresent(open -> open.show(folder));
          return folder;
        },
        job.quietS());
  }

  private static void stop(Watch watching, CountDownLatch ended) {
    watching.stop();
    try {
      ended.await(STOP_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /**
   * Opens a desk with the latest results of a book on it.
   *
   * @param port to listen on
   * @param book the book's folder
   * @param farm the book, whose clock dates what is marked seen
   * @param out where results are published, where that was said
   */
  static Desk desk(int port, Path book, Farm farm, Optional<Path> out) throws IOException {
    Desk desk = Desk.open(port, book, () -> farm.evening(OffsetDateTime.now(farm.zone())));
    Path runs = book.resolve("runs");
    if (out.isPresent() && hasPage(out.get())) {
      desk.show(out.get());
    } else if (out.isEmpty() && Files.isDirectory(runs)) {
      try (Stream<Path> folders = Files.list(runs)) {
        folders
            .filter(WatchUntilStopped::hasPage)
            .max(Comparator.comparing(WatchUntilStopped::written))
            .ifPresent(desk::show);
      }
    }
    return desk;
  }

  private static boolean hasPage(Path folder) {
    return Files.isRegularFile(folder.resolve("report.html"));
  }

  private static FileTime written(Path folder) {
    try {
      return Files.getLastModifiedTime(folder.resolve("report.html"));
    } catch (IOException gone) {
      return FileTime.fromMillis(0);
    }
  }
}
