// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pair;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;

/** Writes the page of the heights that two cameras see. */
public final class PairsPage {

  private PairsPage() {}

  /**
   * What is asked for.
   *
   * @param work folder for photos
   * @param canopies how many of the canopies, from the first
   * @param focals focal lengths, px
   * @param seed of plants, light and noise
   * @param stamp what is measured, such as the commit
   */
  public record Asked(Path work, int canopies, List<Double> focals, long seed, String stamp) {}

  /**
   * Photographs and measures pairs and writes the page.
   *
   * @param asked what is asked for
   * @param progress told each pair when it is done
   * @return the page in Markdown
   * @throws IOException if a file cannot be written
   */
  public static String of(Asked asked, Consumer<String> progress) throws IOException {
    List<ScorePair> scores = new ArrayList<>();
    KeptScores kept = new KeptScores(asked.work(), asked.seed(), asked.stamp());
    for (PairCanopy canopy : PairCanopy.all().stream().limit(asked.canopies()).toList()) {
      List<ScorePair.Grown> grown = new ArrayList<>();
      for (PairStation station : stations(asked, canopy)) {
        ScorePair score =
            kept.of(
                station,
                canopy,
                () -> {
                  if (grown.isEmpty()) {
                    grown.add(ScorePair.Grown.of(canopy, asked.seed()));
                  }
                  return ScorePair.of(station, grown.get(0), asked.work());
                });
        scores.add(score);
        progress.accept(pixelRow(score, canopy.code()).trim());
      }
    }
    return head(asked) + pixels(scores) + plants(scores) + areas(scores) + said(scores);
  }

  /** The longer lens sees some of the canopies only: its photos are four times as large. */
  private static List<PairStation> stations(Asked asked, PairCanopy canopy) {
    List<PairStation> stations = new ArrayList<>();
    for (double focal : asked.focals()) {
      for (double baseline : new double[] {120, 60}) {
        if (focal <= 1200 || canopy.beforeLongLens()) {
          stations.add(new PairStation(focal, baseline));
        }
      }
    }
    return stations;
  }

  private static String head(Asked asked) {
    return line(
        "# Pairs of cameras%n%nMade by `batch/proving/prove pairs`; %s, seed %d.%n%nRendered rafts"
            + " of 18 plants under two cameras %.0f mm over the deck, not quite plumb, the second"
            + " turned and tilted against the first, each with a lens of its own; the station file"
            + " says exactly how they stand. Names of canopies: crop and median area in cm2;"
            + " \"noisy\" is a photo in poor light. The truth is exact: the height of what each"
            + " pixel's ray meets first. The program was fixed before this seed was drawn.%n%n",
        asked.stamp(), asked.seed(), PairStation.HEIGHT_MM);
  }

  private static String pixels(List<ScorePair> scores) {
    StringBuilder page = new StringBuilder();
    page.append(
        "## Height of leaf pixels\n\n"
            + "Found less true. \"Seen\" is the share of leaf pixels that were given a height; the"
            + " rest are holes, which nothing fills. In brackets the same error in px of"
            + " disparity.\n\n"
            + "| focal length, baseline | canopy | seen | bias, mm | median error, mm (px) | 95th,"
            + " mm (px) |\n| --- | --- | ---: | ---: | ---: | ---: |\n");
    scores.forEach(s -> page.append(pixelRow(s, s.canopy().code())));
    for (PairStation station : stations(scores)) {
      page.append(pixelRow(together(scores, station), "**all**"));
    }
    return page.append('\n').toString();
  }

  private static List<PairStation> stations(List<ScorePair> scores) {
    return scores.stream().map(ScorePair::station).distinct().toList();
  }

  private static ScorePair together(List<ScorePair> scores, PairStation station) {
    List<ScorePair> of = scores.stream().filter(s -> s.station().equals(station)).toList();
    double[] errors =
        of.stream().flatMapToDouble(s -> Arrays.stream(s.pixels().errorsMm())).toArray();
    int leaf = of.stream().mapToInt(s -> s.pixels().leaf()).sum();
    List<ScorePair.Plant> plants = of.stream().flatMap(s -> s.plants().stream()).toList();
    return new ScorePair(
        station, of.get(0).canopy(), new ScorePair.Pixels(leaf, errors), plants, List.of());
  }

  private static String pixelRow(ScorePair score, String name) {
    double[] errors = score.pixels().errorsMm().clone();
    double perPx = score.station().mmPerDisparityPx();
    double median = quantile(absolute(errors), 0.5);
    double most = quantile(absolute(errors), 0.95);
    return line(
        "| %.0f px, %.0f mm | %s | %.1f %% | %+.1f | %.1f (%.2f) | %.1f (%.2f) |%n",
        score.station().focalPx(),
        score.station().baselineMm(),
        name,
        100.0 * errors.length / Math.max(1, score.pixels().leaf()),
        quantile(errors, 0.5),
        median,
        median / perPx,
        most,
        most / perPx);
  }

  private static String plants(List<ScorePair> scores) {
    StringBuilder page = new StringBuilder();
    page.append(
        "## Height of plants\n\n"
            + "Open plants (at least 97 % of their area uncovered): mean height of the top surface"
            + " and volume, found less true.\n\n"
            + "| focal length, baseline | plants | by the model (seen too little) | mean height:"
            + " bias, mm | median error, mm | 95th, mm | volume: bias | median error |\n"
            + "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
    for (PairStation station : stations(scores)) {
      ScorePair all = together(scores, station);
      double[] heights = ofSeen(all, p -> height(p) - p.truth().meanHeightMm());
      double[] volumes = ofSeen(all, p -> volume(p) / trueVolume(p) - 1);
      page.append(
          line(
              "| %.0f px, %.0f mm | %d | %d | %+.1f | %.1f | %.1f | %+.1f %% | %.1f %% |%n",
              station.focalPx(),
              station.baselineMm(),
              all.plants().size(),
              all.plants().size() - heights.length,
              quantile(heights, 0.5),
              quantile(absolute(heights), 0.5),
              quantile(absolute(heights), 0.95),
              100 * quantile(volumes, 0.5),
              100 * quantile(absolute(volumes), 0.5)));
    }
    return page.append('\n').toString();
  }

  private static double height(ScorePair.Plant plant) {
    return plant.seen()[0];
  }

  private static double volume(ScorePair.Plant plant) {
    return plant.seen()[1];
  }

  private static double trueVolume(ScorePair.Plant plant) {
    return plant.truth().projectedAreaCm2() * plant.truth().meanHeightMm() / 10;
  }

  private static double[] ofSeen(ScorePair score, ToDoubleFunction<ScorePair.Plant> value) {
    return score.plants().stream().filter(p -> p.seen().length > 0).mapToDouble(value).toArray();
  }

  private static String areas(List<ScorePair> scores) {
    StringBuilder page = new StringBuilder();
    page.append(
        "## Area of open plants\n\n"
            + "Found over true, less 1: with the heights of the pair (f = 1200 px, B = 120 mm), and from the same first photo"
            + " alone with the crop's height model, fitted to these very plants (it can do no"
            + " better), and with that model 30 % too high and 30 % too low.\n\n"
            + "| canopy | pair: bias | median error | 95th | model: bias | median error | 95th |"
            + " model 30 % high: median error | 30 % low: median error |\n"
            + "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
    List<ScorePair> asked = scores.stream().filter(s -> s.station().asksModels()).toList();
    for (PairCanopy canopy : asked.stream().map(ScorePair::canopy).distinct().toList()) {
      page.append(
          areaRow(canopy.code(), asked.stream().filter(s -> s.canopy().equals(canopy)).toList()));
    }
    return page.append(areaRow("**all**", asked)).append('\n').toString();
  }

  private static String areaRow(String name, List<ScorePair> scores) {
    double[] pair = areaErrors(scores, 0);
    if (pair.length == 0) {
      return line("| %s | no plant stands open | | | | | | | |%n", name);
    }
    double[] model = areaErrors(scores, 1);
    return line(
        "| %s | %+.1f %% | %.1f %% | %.1f %% | %+.1f %% | %.1f %% | %.1f %% | %.1f %% | %.1f %% |%n",
        name,
        100 * quantile(pair, 0.5),
        100 * quantile(absolute(pair), 0.5),
        100 * quantile(absolute(pair), 0.95),
        100 * quantile(model, 0.5),
        100 * quantile(absolute(model), 0.5),
        100 * quantile(absolute(model), 0.95),
        100 * quantile(absolute(areaErrors(scores, 2)), 0.5),
        100 * quantile(absolute(areaErrors(scores, 3)), 0.5));
  }

  private static double[] areaErrors(List<ScorePair> scores, int way) {
    return scores.stream()
        .flatMap(s -> s.plants().stream())
        .mapToDouble(p -> p.areasCm2()[way] / p.truth().projectedAreaCm2() - 1)
        .toArray();
  }

  private static String said(List<ScorePair> scores) {
    StringBuilder page = new StringBuilder("## What the program said\n\n");
    for (ScorePair score : scores) {
      for (String note : score.notes()) {
        page.append(line("- %s, %s: %s%n", score.station().code(), score.canopy().code(), note));
      }
    }
    return page.toString();
  }

  private static double[] absolute(double[] values) {
    return Arrays.stream(values).map(Math::abs).toArray();
  }

  private static double quantile(double[] values, double share) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted.length == 0
        ? Double.NaN
        : sorted[(int) Math.min(sorted.length - 1.0, Math.floor(share * sorted.length))];
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
