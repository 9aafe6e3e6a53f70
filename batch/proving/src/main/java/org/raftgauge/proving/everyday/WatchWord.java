// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.everyday;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Starts the program as a watch of its own and takes the time from a photo to its word. */
final class WatchWord {
  private static final int PATIENCE_S = 120;

  private WatchWord() {}

  /**
   * Which photos are dropped, and when.
   *
   * @param book the crop book; a copy, for the watch writes its history
   * @param photos files to be dropped into the card one after the other
   * @param work an empty folder
   * @param restS from the start of the watch to the first photo, and from a word to the next photo
   */
  record Asked(Path book, List<Path> photos, Path work, int restS) {}

  /** Returns the seconds from each photo's arrival to its word. */
  static List<Double> seconds(Asked asked) throws IOException, InterruptedException {
    Path card = Files.createDirectories(asked.work().resolve("card"));
    Process watch =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "org.raftgauge.batch.cli.Raftgauge",
                "run",
                card.toString(),
                "--book",
                asked.book().toString(),
                "--out",
                asked.work().resolve("out").toString(),
                "--quiet-after",
                "3600",
                "--watch")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      BlockingQueue<String> lines = lines(watch);
      await(lines, "Watch ");
      List<Double> seconds = new ArrayList<>();
      for (Path photo : asked.photos()) {
        TimeUnit.SECONDS.sleep(asked.restS());
        // Written beside the card and moved there: a camera's file that is whole at once.
        Path draft = Files.copy(photo, asked.work().resolve(photo.getFileName()));
        long from = System.nanoTime();
        Files.move(draft, card.resolve(photo.getFileName()), StandardCopyOption.ATOMIC_MOVE);
        await(lines, photo.getFileName().toString());
        seconds.add((System.nanoTime() - from) / 1e9);
      }
      return seconds;
    } finally {
      watch.destroy();
      watch.waitFor(PATIENCE_S, TimeUnit.SECONDS);
    }
  }

  private static BlockingQueue<String> lines(Process watch) {
    BlockingQueue<String> lines = new LinkedBlockingQueue<>();
    Thread reader =
        new Thread(
            () -> {
              try (BufferedReader said =
                  new BufferedReader(
                      new InputStreamReader(watch.getInputStream(), StandardCharsets.UTF_8))) {
                said.lines().forEach(lines::add);
              } catch (IOException | UncheckedIOException ended) {
                // The watch was stopped.
              }
            },
            "watch output");
    reader.setDaemon(true);
    reader.start();
    return lines;
  }

  private static void await(BlockingQueue<String> lines, String part)
      throws IOException, InterruptedException {
    String line = "";
    while (line != null && !line.contains(part)) {
      line = lines.poll(PATIENCE_S, TimeUnit.SECONDS);
    }
    if (line == null) {
      throw new IOException("the watch said nothing of \"" + part + "\"");
    }
  }
}
