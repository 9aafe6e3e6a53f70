// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.everyday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.raftgauge.core.problem.InputException;

/** Writes the page on what a person waits for every day. */
public final class EverydayPage {
  private static final int EVENINGS = 2;
  private static final int ROUNDS = 3;
  private static final int PHOTOS = 4;

  private EverydayPage() {}

  /**
   * What is asked for.
   *
   * @param work an empty folder
   * @param rafts of the large page
   * @param seed of its farm
   * @param stamp which commit is measured
   */
  public record Asked(Path work, int rafts, long seed, String stamp) {}

  /**
   * Measures and writes.
   *
   * @param asked what is asked for
   * @return the page, Markdown
   * @throws IOException if a browser or the watch cannot be started, or says nothing
   * @throws InputException if the program refuses the pretended farm
   * @throws InterruptedException if it is interrupted
   */
  public static String of(Asked asked) throws IOException, InputException, InterruptedException {
    Path page =
        new PretendFarm(asked.work().resolve("farm"), asked.rafts(), EVENINGS).page(asked.seed());
    List<OpenPage.Took> took = new ArrayList<>();
    for (int round = 0; round < ROUNDS; round++) {
      took.add(OpenPage.of(page, Files.createDirectories(asked.work().resolve("open" + round))));
    }
    OpenPage.Took slowest =
        took.stream().max(Comparator.comparingDouble(OpenPage.Took::seconds)).orElseThrow();
    double most = took.stream().mapToDouble(OpenPage.Took::rendererMb).max().orElse(0);
    return String.format(
        Locale.ROOT,
        """
        # What a person waits for

        Made by `batch/proving/prove everyday`; %s, seed %d, %d cores, JDK %s. Times depend on the machine.

        **The page of %d rafts** of 24 sites, %d evenings of each, as a run wrote it (without pictures of photos; growth plots lie
        beside it): %.1f MB, %d elements. In a headless Chromium it is loaded and laid out after %.1f s (slowest of %d, each in a
        new browser), its scripts hold %.0f MB, and %d pictures are loaded; the process that shows it takes %.0f MB at most.
        Asked: 3 s, 300 MB.

        **The word at the station**, seconds from the moment a photo lies on the card to its word, the look once a second and the
        wait until a file stands still included; sample photos, one after the other:

        | the watch has run for | 1st photo | %s |
        | --- | ---: | %s |
        %s%s
        Asked: 10 s. A watch measures a bundled photo as it starts, so that the first photo is no slower than the next.
        """,
        asked.stamp(),
        asked.seed(),
        Runtime.getRuntime().availableProcessors(),
        System.getProperty("java.version"),
        asked.rafts(),
        EVENINGS,
        Files.size(page) / 1e6,
        slowest.elements(),
        slowest.seconds(),
        ROUNDS,
        slowest.heapMb(),
        slowest.pictures(),
        most,
        Stream.of("2nd", "3rd", "4th").collect(Collectors.joining(" | ")),
        Stream.of("---:", "---:", "---:").collect(Collectors.joining(" | ")),
        words(asked.work().resolve("at-once"), 0),
        words(asked.work().resolve("rested"), 20));
  }

  private static String words(Path work, int restS) throws IOException, InterruptedException {
    Path samples = Path.of("sample-images");
    Path book = Files.createDirectories(work).resolve("book");
    copy(samples.resolve("book"), book);
    List<Path> photos;
    try (Stream<Path> walk = Files.walk(samples.resolve("photos"))) {
      photos =
          walk.filter(p -> p.toString().matches(".*_K[TV]-\\d+\\.jpg"))
              .sorted(Comparator.comparing(p -> p.getFileName().toString()))
              .limit(PHOTOS)
              .toList();
    }
    List<Double> seconds =
        WatchWord.seconds(new WatchWord.Asked(book, photos, work.resolve("watch"), restS));
    return "| "
        + restS
        + " s | "
        + seconds.stream()
            .map(s -> String.format(Locale.ROOT, "%.1f", s))
            .collect(Collectors.joining(" | "))
        + " |\n";
  }

  /** Copies what the grower keeps of a book. */
  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> walk = Files.walk(from)) {
      for (Path each : walk.toList()) {
        String name = each.getFileName().toString();
        if (!name.startsWith("history.db") && !name.equals("run.lock")) {
          Path at = to.resolve(from.relativize(each).toString());
          if (Files.isDirectory(each)) {
            Files.createDirectories(at);
          } else {
            Files.copy(each, at);
          }
        }
      }
    }
  }
}
