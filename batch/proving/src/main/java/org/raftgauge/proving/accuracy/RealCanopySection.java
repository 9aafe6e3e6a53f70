// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.raftgauge.proving.accuracy.RealPhotoScore.Agreement;

/** Writes the accuracy report's section on real photos with hand-drawn masks. */
public final class RealCanopySection {
  /** A photo with less plant than this shows whether bare ground is taken for plants. */
  private static final double NEARLY_BARE = 0.02;

  private RealCanopySection() {}

  /**
   * Sums up the scores of real photos, set by set.
   *
   * @param scores any number, in any order; none gives a line that says so
   * @return lines of Markdown, with a heading of second level
   */
  public static List<String> lines(List<RealPhotoScore> scores) {
    List<String> lines = new ArrayList<>();
    lines.add("## Real photos with hand-drawn masks");
    lines.add("");
    if (scores.isEmpty()) {
      lines.add("Not run: the photos are not beside the project.");
      return lines;
    }
    lines.add("Soil, straw and moss instead of a board; no scale, so only the canopy is judged:");
    lines.add(
        "coverage of at least half a pixel against the mask. Excess green is 2 G - R - B cut");
    lines.add("at 0 with Otsu's threshold on the same photos; the last column of its rows gives");
    lines.add("what the sets' notes report for it over the authors' larger sets.");
    lines.add(
        "Thresholds were settled with all of these photos in view, the weights of the second");
    lines.add(
        "look were fitted to every second one, the first, third and so on by name; \"the other");
    lines.add("half\" are those between. \"Rim given\" is what would be if all within 3 px of the");
    lines.add("drawn outlines were right: those wander by 2 to 6 px, so that about half of the");
    lines.add("disagreement is theirs.");
    lines.add("");
    lines.add(
        "| set | photos | method | Dice mean | Dice 5 % | Dice worst | area ratio median"
            + " | larger set: mean, 5 %, worst |");
    lines.add("|---|---|---|---|---|---|---|---|");
    for (RealSet set : RealSet.values()) {
      List<RealPhotoScore> own = scores.stream().filter(s -> s.set() == set).toList();
      if (!own.isEmpty()) {
        lines.add(row(own, "Raftgauge", RealPhotoScore::ours, ""));
        lines.add(row(otherHalf(own), "Raftgauge, the other half", RealPhotoScore::ours, ""));
        lines.add(row(own, "Raftgauge, rim given", RealPhotoScore::rimGiven, ""));
        lines.add(row(own, "excess green", RealPhotoScore::plain, larger(set)));
      }
    }
    lines.addAll(bare(scores));
    return lines;
  }

  /** The second, fourth and so on by name; all where there is but one. */
  private static List<RealPhotoScore> otherHalf(List<RealPhotoScore> scores) {
    List<RealPhotoScore> sorted =
        scores.stream().sorted(Comparator.comparing(RealPhotoScore::photo)).toList();
    List<RealPhotoScore> half = new ArrayList<>();
    for (int i = 1; i < sorted.size(); i += 2) {
      half.add(sorted.get(i));
    }
    return half.isEmpty() ? sorted : half;
  }

  /** Figures of the sets' notes: 400 peanut photos, 166 wheat photos. */
  private static String larger(RealSet set) {
    return switch (set) {
      case PEANUT -> "0.836, 0.578, 0.067";
      case WHEAT -> "0.710, 0.245, 0.057";
    };
  }

  private static String row(
      List<RealPhotoScore> scores,
      String method,
      Function<RealPhotoScore, Agreement> of,
      String larger) {
    List<Double> dice = scores.stream().map(s -> of.apply(s).dice()).toList();
    List<Double> ratio = scores.stream().map(s -> of.apply(s).areaRatio()).toList();
    return String.format(
        Locale.ROOT,
        "| %s | %d | %s | %.3f | %.3f | %.3f | %.2f | %s |",
        scores.get(0).set().label(),
        scores.size(),
        method,
        dice.stream().mapToDouble(Double::doubleValue).average().orElseThrow(),
        ScoreRun.quantile(dice, 0.05),
        ScoreRun.quantile(dice, 0),
        ScoreRun.quantile(ratio, 0.5),
        larger);
  }

  private static List<String> bare(List<RealPhotoScore> scores) {
    List<RealPhotoScore> bare = scores.stream().filter(s -> s.truthShare() < NEARLY_BARE).toList();
    if (bare.isEmpty()) {
      return List.of();
    }
    return List.of(
        "",
        String.format(
            Locale.ROOT,
            "Nearly bare photos (under 2 %% plant): %d; of their area wrongly called plant at most"
                + " %.2f %% (excess green: %.2f %%).",
            bare.size(),
            100 * worst(bare, RealPhotoScore::ours),
            100 * worst(bare, RealPhotoScore::plain)));
  }

  private static double worst(List<RealPhotoScore> scores, Function<RealPhotoScore, Agreement> of) {
    return scores.stream().mapToDouble(s -> of.apply(s).falseShare()).max().orElseThrow();
  }
}
