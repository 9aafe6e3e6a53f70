// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scale;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes the page on the analysis of very many sites. */
public final class ScalePage {
  private ScalePage() {}

  /**
   * What is asked for.
   *
   * @param work folder for farms and results
   * @param sites sizes of the farms
   * @param seed of the farms
   * @param stamp which commit is measured
   */
  public record Asked(Path work, List<Integer> sites, long seed, String stamp) {

    /** Copies the list. */
    public Asked {
      sites = List.copyOf(sites);
    }
  }

  /**
   * Measures and writes.
   *
   * @param asked what is asked for
   * @return the page, Markdown
   * @throws IOException if a file cannot be written
   */
  public static String of(Asked asked) throws IOException {
    StringBuilder page =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                """
                # Analysis of very many sites

                Made by `batch/proving/prove scale`; %s, seed %d, %d cores, JDK %s, collector and heap as the program is
                started: at most %d MB. Farms without pictures, written straight into a history: rafts of 18 sites in eight
                cohorts, some 25 photos a site, one plant in twelve slow, the oldest closed. Timed is the last evening, worked out
                anew as every evening is: reading the book; verdicts, curves, worklist and forecast from the history ("judge");
                wording the tables. Plots and sheets are not in it. One more evening costs what all do, for each photo moves its
                raft, its cohort and their curves; "judge again" is the evening before, worked out right after from what is read
                anew, in a process that is warm as a watch is. CPU is of all threads, the compiler's and the collector's too;
                sizes are measured one after the other in one process.

                | sites | what | wall s | CPU s | judged, sites a second |
                | ---: | --- | ---: | ---: | ---: |
                """,
                asked.stamp(),
                asked.seed(),
                Runtime.getRuntime().availableProcessors(),
                System.getProperty("java.version"),
                Runtime.getRuntime().maxMemory() >> 20));
    for (int sites : asked.sites()) {
      MeasureScale.Result result = MeasureScale.of(sites, asked.seed(), asked.work());
      result.laps().forEach((what, lap) -> page.append(row(result.sites(), what, lap)));
    }
    return page.toString();
  }

  private static String row(int sites, String what, Lap lap) {
    return String.format(
        Locale.ROOT,
        "| %d | %s | %.1f | %.1f | %s |%n",
        sites,
        what,
        lap.wallSeconds(),
        lap.cpuSeconds(),
        what.equals(MeasureScale.JUDGE) || what.equals(MeasureScale.AGAIN)
            ? String.format(Locale.ROOT, "%.0f", sites / lap.wallSeconds())
            : "");
  }
}
