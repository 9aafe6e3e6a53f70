// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Writes the page of the forecast's figures. */
public final class HarvestPage {
  private HarvestPage() {}

  /**
   * What is asked.
   *
   * @param seasons of each kind
   * @param seed of the first
   * @param work folder for their crop books
   * @param rendered whether seasons with rendered photos are added
   * @param weekly published weekly weights, where there are
   */
  public record Asked(int seasons, long seed, Path work, boolean rendered, Optional<Path> weekly) {}

  /**
   * Makes the page.
   *
   * @param asked seasons and where they are written
   * @return Markdown
   * @throws IOException if a book cannot be written or the table cannot be read
   */
  public static String of(Asked asked) throws IOException {
    SeasonSetting s = SeasonSetting.usual(false);
    StringBuilder page = new StringBuilder("# Harvest forecasts on simulated seasons\n\n");
    page.append(
        String.format(
            Locale.ROOT,
            "Made by `batch/proving/prove harvest --seasons %d --seed %d%s`, never by hand. Weights"
                + " are estimates from pictures, not legal-for-trade weighing; the seasons are"
                + " invented and say how the statistics work, not how a farm will do.%n%n",
            asked.seasons(),
            asked.seed(),
            asked.rendered() ? " --rendered" : ""));
    page.append(
        String.format(
            Locale.ROOT,
            "Each season: a farm with one of two growth shapes (logistic or Gompertz; the program"
                + " is not told which) and an area growth rate of 5 to 7 %% a day at harvest, %d"
                + " past cycles of 36 plants, %d rafts of 18 plants tonight, photos every second"
                + " evening, its own %d picks weighed in the last cycle (ln weight by ln area with"
                + " exponent 1.1 to 1.35, single plants %.0f %% about it), the past cycles' rafts"
                + " weighed whole at harvest on day %d, and its own fit of the grader. Plants differ by %.0f %% in area for good and wander by %.0f %% a day;"
                + " cycles differ by 10 %% in size, 5 %% in pace, a day in start; daily weather"
                + " moves growth by %.0f %% of itself and carries over by 0.6; area errors %.1f %%,"
                + " of which %.0f %% persistent; %.2f %% of plants die a day. Forecast on day %d"
                + " for day %d, truth with the deaths to come. \"Closed\": a site shows at most %.0f"
                + " cm2 and is closed from nine tenths of that.%n%n",
            s.pastCycles(),
            s.rafts(),
            s.picks(),
            100 * s.weightSd(),
            Season.HARVESTED_DAT,
            100 * s.plantSd(),
            100 * s.wanderSd(),
            100 * s.weatherSd(),
            100 * Math.hypot(s.freshSd(), s.persistentSd()),
            100 * s.persistentSd(),
            100 * s.lostPerDay(),
            SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD,
            SeasonSetting.HARVEST_DAT,
            SeasonSetting.PITCH_CM2));
    page.append("| | wanted | open | closed |\n| --- | --- | ---: | ---: |\n");
    HarvestScore open =
        HarvestScore.of(
            SeasonSetting.usual(false),
            asked.seasons(),
            asked.seed(),
            asked.work().resolve("open"));
    HarvestScore closed =
        HarvestScore.of(
            SeasonSetting.usual(true),
            asked.seasons(),
            asked.seed() + 1_000_000,
            asked.work().resolve("closed"));
    rows(page, open, closed);
    page.append(
        "\nA season's rafts share weather and grader, so the rafts count for fewer than their"
            + " number: with 100 seasons a coverage of 80 % is known to about 4 points.\n");
    page.append(
        "\n## Where the error comes from\n\nParts of ln(forecast / truth) of raft totals, by what"
            + " only the simulation knows. Weather to come is what is left to one who knows the"
            + " cycle's curve and tonight's weather.\n");
    budget(page, "open", open);
    budget(page, "closed", closed);
    if (asked.rendered()) {
      page.append(RenderedSection.of(asked.seed(), asked.work()));
    }
    if (asked.weekly().isPresent()) {
      page.append(WeeklyWeights.section(asked.weekly().get()));
    }
    return page.toString();
  }

  private static void budget(StringBuilder page, String name, HarvestScore score) {
    page.append("\n| ").append(name).append(" | mean | sd | median absolute |\n");
    page.append("| --- | ---: | ---: | ---: |\n");
    score
        .budget
        .rows()
        .forEach(r -> page.append("| ").append(String.join(" | ", r)).append(" |\n"));
  }

  private static void rows(StringBuilder page, HarvestScore o, HarvestScore c) {
    row(page, "seasons (rafts)", ">= 200 together", count(o), count(c));
    row(
        page,
        "raft total 5 days ahead, median absolute error",
        "<= 5.5 %",
        share(HarvestScore.quantile(o.errors, 0.5)),
        share(HarvestScore.quantile(c.errors, 0.5)));
    row(page, "mean error", "", share(o.bias / o.rafts), share(c.bias / c.rafts));
    row(
        page,
        "raft totals inside the 80 % interval",
        "76-84 %",
        share(o.inside80 / (double) o.rafts),
        share(c.inside80 / (double) c.rafts));
    row(
        page,
        "mean width of it, of the forecast",
        "",
        share(o.width80 / o.rafts),
        share(c.width80 / c.rafts));
    row(
        page,
        "width needed: 10th to 90th percentile of the errors",
        "at most half less",
        share(o.needed()),
        share(c.needed()));
    row(
        page,
        "raft totals inside the 95 % interval",
        "",
        share(o.inside95 / (double) o.rafts),
        share(c.inside95 / (double) c.rafts));
    row(
        page,
        "crop totals inside the 80 % interval",
        "",
        share(o.cropInside80 / (double) o.seasons),
        share(c.cropInside80 / (double) c.seasons));
    ready(page, "1.5 days (whole days: within 1)", "80 %", 1.5, List.of(o, c));
    ready(page, "2 days", "", 2, List.of(o, c));
    row(
        page,
        "ready days inside the 80 % interval",
        "",
        share(o.readyInside80 / (double) o.rafts),
        share(c.readyInside80 / (double) c.rafts));
  }

  /** Adds the share of ready days within some days, and the most that anyone could reach. */
  private static void ready(
      StringBuilder page, String name, String wanted, double days, List<HarvestScore> scores) {
    List<String> told =
        scores.stream().map(s -> share(HarvestScore.within(s.readyOff, days))).toList();
    List<String> most =
        scores.stream().map(s -> share(HarvestScore.within(s.oracleOff, days))).toList();
    row(page, "ready day within " + name, wanted, told.get(0), told.get(1));
    row(
        page,
        "the same told by one who knows all but the weather to come and what is a plant's own",
        "",
        most.get(0),
        most.get(1));
  }

  private static String count(HarvestScore s) {
    return s.seasons
        + " ("
        + s.rafts
        + ")"
        + (s.noGrader > 0 ? ", no grader in " + s.noGrader : "");
  }

  private static String share(double share) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }

  private static void row(StringBuilder page, String what, String wanted, String o, String c) {
    page.append("| ").append(String.join(" | ", what, wanted, o, c)).append(" |\n");
  }
}
