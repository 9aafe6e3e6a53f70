// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.weights;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.raftgauge.core.grader.FitGrader;
import org.raftgauge.core.grader.FitRule;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.LeftOut;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.ReviewTable;
import org.raftgauge.core.grader.Size;
import org.raftgauge.core.grader.Suspect;

/** Writes the page of the grader's figures. */
public final class GraderPage {
  private static final Grader.Origin ORIGIN = new Grader.Origin("", "", "", "", "", 24, "");
  private static final List<Integer> WEIGHINGS = List.of(8, 16, 32);

  private GraderPage() {}

  /**
   * Makes the page.
   *
   * @param table {@code lettuce-traits.csv} of the shared data
   * @param resamples calibrations of each size
   * @return Markdown
   * @throws IOException if the table cannot be read
   */
  public static String of(Path table, int resamples) throws IOException {
    List<Lettuce> plants = Lettuce.read(table);
    StringBuilder page = new StringBuilder("# The grader on published weights\n\n");
    page.append("Made by `batch/proving/prove grader`, never by hand. ")
        .append(plants.size())
        .append(
            " lettuce plants of four varieties, 2 to 460 g, measured destructively (Hemming and"
                + " others 2021, doi:10.4121/15023088.v1). Their leaf area is total, not projected:"
                + " this checks the statistics, not the camera. Prediction is the median; errors are"
                + " |predicted - weighed| / weighed.\n");
    leftOut(page, plants);
    few(page, plants, resamples);
    odd(page, plants);
    return page.toString();
  }

  private static void leftOut(StringBuilder page, List<Lettuce> plants) {
    page.append("\n## Each plant left out in turn\n\n")
        .append("The terms are chosen once from all plants by leave-one-out error; the numbers are")
        .append(" found again without each plant.\n\n")
        .append("| told from | terms | fitted by | mean error | median error | sd of ln w |\n")
        .append("| --- | --- | --- | ---: | ---: | ---: |\n");
    row(page, "leaf area, variety", fit(plants, Lettuce.Area.LEAF, Set.of(Size.AREA)));
    row(
        page,
        "disc of the diameter, height, variety",
        fit(plants, Lettuce.Area.DISC, Set.of(Size.AREA, Size.HEIGHT)));
    row(page, "disc of the diameter, variety", fit(plants, Lettuce.Area.DISC, Set.of(Size.AREA)));
    page.append("\nBaseline given with the data, on all plants, in sample, varieties pooled:")
        .append(" leaf area 21 %, disc 77 %, disc and height 54 %.\n");
  }

  private static RegimeFit fit(List<Lettuce> plants, Lettuce.Area area, Set<Size> sizes) {
    FitRule rule = new FitRule(sizes, Set.of(), FitRule.FEWEST);
    Grader grader =
        (Grader)
            FitGrader.fit(
                "lettuce",
                plants.stream().map(p -> p.weighed(area, p.variety())).toList(),
                rule,
                ORIGIN);
    return grader.fit(Regime.OPEN).orElseThrow();
  }

  private static void row(StringBuilder page, String name, RegimeFit fit) {
    LeftOut out = fit.numbers().leftOut();
    page.append(
        String.format(
            Locale.ROOT,
            "| %s | %d | %s | %.1f %% | %.1f %% | %.3f |\n",
            name,
            fit.numbers().terms().size(),
            fit.numbers().estimator(),
            100 * out.meanShare(),
            100 * out.medianShare(),
            out.sdLn()));
  }

  private static void few(StringBuilder page, List<Lettuce> plants, int resamples) {
    page.append("\n## From few weighings\n\n")
        .append("Calibrated from n plants of each variety drawn at random, ")
        .append(resamples)
        .append(
            " times each, model choice included; scored on the plants not drawn. Intervals are"
                + " nominal 90 %.\n\n")
        .append("| n of each variety | varieties | coverage | mean width | mean error |\n")
        .append("| ---: | --- | ---: | ---: | ---: |\n");
    Resampling pooled = Resampling.of(plants, 16, resamples, Resampling.Varieties.POOLED);
    for (int n : WEIGHINGS) {
      few(page, Resampling.of(plants, n, resamples, Resampling.Varieties.KNOWN), "known");
    }
    few(page, pooled, "pooled");
    page.append(
            "\nThe trap of pooling: over all plants the pooled interval still covers, because it")
        .append(" is so wide, but each variety is told wrong, and a raft holds one variety:\n\n")
        .append("| variety | coverage, pooled | bias, pooled |\n| --- | ---: | ---: |\n");
    pooled
        .byVariety()
        .forEach(
            (variety, own) ->
                page.append(
                    String.format(
                        Locale.ROOT,
                        "| %s | %.0f %% | %+.0f %% |\n",
                        variety,
                        100 * own.coverage(),
                        100 * Math.expm1(own.biasLn()))));
  }

  private static void few(StringBuilder page, Resampling r, String varieties) {
    page.append(
        String.format(
            Locale.ROOT,
            "| %d | %s | %.1f %% | %.0f %% | %.1f %% |\n",
            r.weighings(),
            varieties,
            100 * r.coverage(),
            100 * r.widthShare(),
            100 * r.meanShare()));
  }

  private static void odd(StringBuilder page, List<Lettuce> plants) {
    List<Suspect> found =
        ReviewTable.review(
            plants.stream()
                .map(p -> new ReviewTable.Row("plant " + p.id(), p.variety(), p.numbers()))
                .toList());
    page.append("\n## Rows that the review names\n\nNothing is dropped for it.\n\n");
    found.forEach(s -> page.append("- ").append(s.words()).append('\n'));
  }
}
