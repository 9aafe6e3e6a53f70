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
    StringBuilder page = new StringBuilder("# Analysis of very many sites\n");
    for (int sites : asked.sites()) {
      MeasureScale.Result result = MeasureScale.of(sites, asked.seed(), asked.work());
      result
          .laps()
          .forEach(
              (what, lap) ->
                  page.append(
                      String.format(
                          Locale.ROOT,
                          "| %d | %s | %.1f | %.1f |%n",
                          result.sites(),
                          what,
                          lap.wallSeconds(),
                          lap.cpuSeconds())));
    }
    return page.toString();
  }
}
