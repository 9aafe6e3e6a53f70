// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.raftgauge.proving.pace.WholeRun.Call;
import org.raftgauge.proving.set.SetName;

/** Writes the page of speeds. */
public final class PacePage {
  private PacePage() {}

  /**
   * What is asked for.
   *
   * @param root the checkout
   * @param work folder for photos and runs
   * @param order seed and number of the photos
   * @param megapixels sizes of the photos
   * @param rounds that count
   * @param stamp which commit is measured
   */
  public record Asked(
      Path root,
      Path work,
      SetName.Order order,
      List<Double> megapixels,
      int rounds,
      String stamp) {

    /** Returns the launcher's own file of Java's options. */
    Path options() {
      return root.resolve("batch/java.options");
    }
  }

  /**
   * Measures and writes.
   *
   * @param asked what is asked for
   * @param say told what is going on
   * @return the page, Markdown
   * @throws IOException if a photo or a process fails
   * @throws InterruptedException if the thread is interrupted
   */
  public static String of(Asked asked, Consumer<String> say)
      throws IOException, InterruptedException {
    StringBuilder page = new StringBuilder(head(asked));
    for (double megapixels : asked.megapixels()) {
      say.accept(megapixels + " megapixels");
      page.append(section(PaceOfSet.of(asked, megapixels, say)));
    }
    return page.toString();
  }

  private static String head(Asked asked) {
    String machine =
        System.getProperty("os.name")
            + " "
            + System.getProperty("os.arch")
            + ", "
            + Runtime.getRuntime().availableProcessors()
            + " cores, "
            + String.format(
                Locale.ROOT,
                "%.1f other tasks running as it began",
                Math.max(0, ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage()));
    return String.format(
        Locale.ROOT,
        """
        # How fast

        Written by `prove pace`, %s. Figures of one machine on one day: ratios between rows of one table say more than times.

        - Machine: %s; JDK %s (%s), %s. Compiling the program's code while it warms up is in the table of whole runs and not in the other.
        - `djpeg` is the system's (libjpeg-turbo with vector instructions on Debian), decoding to nowhere. The plain script is
          `yardstick/plain_opencv.py` (OpenCV from Python, vectorised, one thread): markers, undistort, warp at 0.7 mm a pixel,
          excess green, Otsu, opening and closing, nearest site. It measures less than the program does: no evened light, no parallax, no
          overlapping plants, no error; the boards without markers are given to it exactly.
        - CPU is of one thread, median over photos of the median over %d rounds; spread is the middle half of the rounds over their
          median. Photos are rendered (`--seed %d`, %d of the set), so that the areas' truth is known: median error of open sites.
        - Aimed at are 2.6 times `djpeg` at 12 megapixels and 2.2 times at 24. That is missed, by as much as the tables say: after decoding and
          averaging, some fifty passes over a board's deck picture follow, of which none dominates. What was tried and taken: all plants
          once, in 0.85 mm a pixel; paths over canopy on every second pixel; giving up searches that cannot win; the light
          fitted to 8,000 points of a board. Tried and left: a board's arrays lent to the next (a third less to collect, no less CPU), deck
          pictures of 1.2 mm (a fifth less CPU, more error). Decoding, averaging in linear light and judging sharpness alone take more than
          2.6 times `djpeg`. What is left to try: the passes as one over 8-bit levels in strips that stay in the processor's cache.

        """,
        asked.stamp(),
        machine,
        System.getProperty("java.version"),
        System.getProperty("java.vendor"),
        System.getProperty("java.vm.name"),
        asked.rounds(),
        asked.order().seed(),
        asked.order().photos());
  }

  private static String section(PaceOfSet pace) {
    StringBuilder text = new StringBuilder();
    text.append(String.format(Locale.ROOT, "## %.0f megapixels%n%n", pace.megapixels()));
    text.append(
        """
        | | CPU ms a photo | spread | x `djpeg` | median error |
        | --- | ---: | ---: | ---: | ---: |
        """);
    row(text, pace, "`djpeg`", pace.decoder(), false);
    row(text, pace, "plain script", pace.script(), true);
    row(text, pace, "Raftgauge, file to site rows", Optional.of(pace.own()), true);
    text.append('\n').append(photos(pace)).append('\n').append(stages(pace));
    text.append('\n').append(runs(pace)).append('\n').append(pace.longRun().words()).append('\n');
    return text.toString().replace("\r\n", "\n");
  }

  private static void row(
      StringBuilder text, PaceOfSet pace, String name, Optional<Lap> lap, boolean measures) {
    if (lap.isEmpty()) {
      text.append("| ").append(name).append(" | not on this machine | | | |\n");
      return;
    }
    String times =
        pace.decoder()
            .map(d -> String.format(Locale.ROOT, "%.1f", lap.get().seconds() / d.seconds()))
            .orElse("");
    String error =
        measures ? String.format(Locale.ROOT, "%.1f %%", 100 * pace.medianError(lap.get())) : "";
    text.append(
        String.format(
            Locale.ROOT,
            "| %s | %s | %.0f %% | %s | %s |%n",
            name,
            Lap.milliseconds(lap.get().seconds()),
            100 * lap.get().spread(),
            times,
            error));
  }

  private static String stages(PaceOfSet pace) {
    StringBuilder text =
        new StringBuilder("| where the program's time goes | share |\n| --- | ---: |\n");
    pace.stages()
        .forEach(
            (stage, share) ->
                text.append(String.format(Locale.ROOT, "| %s | %.0f %% |%n", stage, 100 * share)));
    return text.toString();
  }

  private static String photos(PaceOfSet pace) {
    List<String> rows = new ArrayList<>();
    rows.add("| photo | `djpeg` ms | script ms | Raftgauge ms |\n| --- | ---: | ---: | ---: |");
    for (String photo : pace.photos()) {
      rows.add(
          String.format(
              Locale.ROOT,
              "| %s | %s | %s | %s |",
              photo,
              pace.decoder().map(l -> Lap.milliseconds(l.seconds(photo))).orElse(""),
              pace.script().map(l -> Lap.milliseconds(l.seconds(photo))).orElse(""),
              Lap.milliseconds(pace.own().seconds(photo))));
    }
    return rows.stream().collect(Collectors.joining("\n", "", "\n"));
  }

  private static String runs(PaceOfSet pace) {
    StringBuilder text = new StringBuilder();
    text.append("Whole runs over these ")
        .append(pace.photos().size())
        .append(
            " photos in a process of their own, start and warm-up included; of so few photos the"
                + " launcher has no code optimised:\n\n")
        .append("| workers | overlays | wall s | CPU s | photos a second | peak resident MB |\n")
        .append("| ---: | --- | ---: | ---: | ---: | ---: |\n");
    for (Map.Entry<Call, WholeRun> entry : pace.runs().entrySet()) {
      WholeRun run = entry.getValue();
      text.append(
          String.format(
              Locale.ROOT,
              "| %d | %s | %.1f | %.1f | %.2f | %.0f |%n",
              entry.getKey().workers(),
              entry.getKey().overlays() ? "yes" : "no",
              run.wallSeconds(),
              run.cpuSeconds(),
              pace.photos().size() / run.wallSeconds(),
              run.peakMb()));
    }
    return text.toString();
  }
}
