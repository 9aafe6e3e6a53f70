// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.raftgauge.proving.accuracy.LookScore.Errors;
import org.raftgauge.proving.accuracy.LookScore.FalseArea;

/** Writes scores as a Markdown table to read and a CSV to work with. */
public final class ScoreFiles {
  private static final String CSV_HEADER =
      "method,look,open_sites,open_missed,open_bias,open_median,open_p95,"
          + "open_median_cm2,open_p95_cm2,"
          + "overlapped_sites,overlapped_missed,overlapped_bias,overlapped_median,overlapped_p95,"
          + "overlapped_median_cm2,overlapped_p95_cm2,"
          + "empty_sites,empty_missed,empty_median_cm2,empty_largest_cm2,empty_over_2_cm2";

  private ScoreFiles() {}

  /**
   * The scores of one way to measure.
   *
   * @param method its name
   * @param scores its scores
   */
  public record Method(String method, List<LookScore> scores) {}

  /**
   * Writes {@code accuracy.md} and {@code accuracy.csv}.
   *
   * @param folder where to
   * @param methods the ways to measure, scored on the same truth
   * @throws IOException if a file cannot be written
   */
  public static void write(Path folder, List<Method> methods) throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("accuracy.md"), markdown(methods));
    List<String> lines = new ArrayList<>(List.of(CSV_HEADER));
    for (Method method : methods) {
      method.scores().forEach(score -> lines.add(csv(method.method(), score)));
    }
    Files.writeString(folder.resolve("accuracy.csv"), String.join("\r\n", lines) + "\r\n");
  }

  /**
   * Writes the methods as Markdown, one table each.
   *
   * @param methods the scored methods
   * @return the text
   */
  public static String markdown(List<Method> methods) {
    StringBuilder text = new StringBuilder();
    for (Method method : methods) {
      text.append("### ").append(method.method()).append("\n\n");
      text.append(
              "| look | open sites (missed) | bias | median | 95th | median, 95th cm2 |"
                  + " overlapped (missed) | bias | median | 95th | median, 95th cm2 |")
          .append(" empty (missed) | median cm2 | largest cm2 | over 2 cm2 |\n");
      text.append("| --- |").append(" ---: |".repeat(14)).append('\n');
      method.scores().forEach(score -> text.append(row(score)));
      text.append('\n');
    }
    return text.toString();
  }

  private static String row(LookScore score) {
    FalseArea empty = score.empty();
    return String.format(
            Locale.ROOT,
            "| %s | %s | %s | %d (%d) | %.2f | %.2f | %d |%n",
            score.look(),
            cells(score.open()),
            cells(score.overlapped()),
            empty.sites(),
            empty.missed(),
            empty.medianCm2(),
            empty.largestCm2(),
            empty.over2Cm2())
        .replace("\r\n", "\n");
  }

  private static String cells(Errors errors) {
    return errors.sites() == 0
        ? "0 | | | | "
        : String.format(
            Locale.ROOT,
            "%d (%d) | %+.1f %% | %.1f %% | %.1f %% | %.2f, %.1f",
            errors.sites(),
            errors.missed(),
            100 * errors.biasShare(),
            100 * errors.medianShare(),
            100 * errors.p95Share(),
            errors.medianCm2(),
            errors.p95Cm2());
  }

  private static String csv(String method, LookScore score) {
    FalseArea empty = score.empty();
    return String.format(
        Locale.ROOT,
        "%s,%s,%s,%s,%d,%d,%.3f,%.3f,%d",
        method,
        score.look(),
        csv(score.open()),
        csv(score.overlapped()),
        empty.sites(),
        empty.missed(),
        empty.medianCm2(),
        empty.largestCm2(),
        empty.over2Cm2());
  }

  private static String csv(Errors errors) {
    return String.format(
        Locale.ROOT,
        "%d,%d,%.5f,%.5f,%.5f,%.3f,%.3f",
        errors.sites(),
        errors.missed(),
        errors.biasShare(),
        errors.medianShare(),
        errors.p95Share(),
        errors.medianCm2(),
        errors.p95Cm2());
  }
}
