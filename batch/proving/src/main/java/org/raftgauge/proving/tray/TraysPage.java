// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.tray;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.raftgauge.core.track.Tray;

/** Writes the page of what the program says of rendered trays. */
public final class TraysPage {

  private TraysPage() {}

  /**
   * What is asked for.
   *
   * @param work folder for photos
   * @param each trays of each kind
   * @param seed of trays, seedlings, light and camera
   * @param stamp what is measured, such as the commit
   */
  public record Asked(Path work, int each, long seed, String stamp) {}

  /**
   * Photographs and measures trays and writes the page.
   *
   * @param asked what is asked for
   * @param progress told each tray when it is done
   * @return the page in Markdown
   * @throws IOException if a file cannot be written or nothing of a tray is measured
   */
  public static String of(Asked asked, Consumer<String> progress) throws IOException {
    List<ScoreTray> scores = new ArrayList<>();
    for (TrayPlan plan : TrayPlan.plan(asked.seed(), asked.each())) {
      scores.add(ScoreTray.of(plan, TrayPlan.DAYS, asked.work()));
      progress.accept(plan.name() + " (" + plan.layout().grid().sites().size() + " cells)");
    }
    return head(asked) + shares(scores) + cells(scores) + ages(scores) + refusals(scores);
  }

  private static String head(Asked asked) {
    return line(
        "# Trays%n%nMade by `batch/proving/prove trays`; %s, seed %d.%n%nRendered propagation trays"
            + " of 12 x 24 cells 24 mm apart (TS) and 16 x 32 cells 17 mm apart (TL), white, grey or"
            + " black, %d x %d px (%.2f mm a px), one photo an evening at 18:00 in other light each"
            + " time. Seedlings show at 0.12 cm2, unfold to 0.45 cm2 within a day and grow by 18 %% a"
            + " day after that; 6 %% of the cells stay empty, 4 %% hold two seedlings 2 to 4 mm apart."
            + " The photos are measured and judged as the program does.%n%n",
        asked.stamp(),
        asked.seed(),
        PhotographTray.WIDTH_PX,
        PhotographTray.HEIGHT_PX,
        PhotographTray.MM_PER_PX);
  }

  private static String shares(List<ScoreTray> scores) {
    StringBuilder text =
        new StringBuilder(
            line(
                "## Share emerged%n%nFound: cells in which canopy has been seen by that evening."
                    + " \"Seen in bare cells\" are cells without a seedling that show canopy on the"
                    + " photo.%n%n| tray | day | truly emerged | found | off, points | seen in bare"
                    + " cells |%n| --- | ---: | ---: | ---: | ---: | ---: |%n"));
    for (ScoreTray score : scores) {
      for (ScoreTray.Share s : score.emerged()) {
        text.append(
            line(
                "| %s | %d | %.1f %% | %.1f %% | %+.1f | %d |%n",
                score.plan().name(),
                s.day(),
                100.0 * s.truth() / s.cells(),
                100.0 * s.found() / s.cells(),
                s.points(),
                s.bare()));
      }
    }
    double worst = 0;
    int within = 0;
    int all = 0;
    for (ScoreTray score : scores) {
      for (ScoreTray.Share s : score.emerged()) {
        worst = Math.max(worst, Math.abs(s.points()));
        within += Math.abs(s.points()) <= 1 ? 1 : 0;
        all++;
      }
    }
    return text
        + line("%nWithin 1 point: %d of %d photos; at most %.1f off.%n", within, all, worst);
  }

  private static String cells(List<ScoreTray> scores) {
    StringBuilder text =
        new StringBuilder(
            line(
                "%n## Half emergence, doubles and empty cells%n%nAfter the last photo. Half: days"
                    + " after sowing by which half of the cells showed a seedling, from the very"
                    + " moments at which they did; found, from one photo an evening. Doubles are told by"
                    + " area alone; seedlings that showed days apart differ by as much, so that only"
                    + " the plainest are named.%n%n| tray | half,"
                    + " true | half, found (95 %% interval) | doubles found | others called double |"
                    + " empties found | others called empty |%n| --- | ---: | ---: | ---: | ---: |"
                    + " ---: | ---: |%n"));
    for (ScoreTray s : scores) {
      text.append(
          line(
              "| %s | %.2f | %s | %s | %d | %s | %d |%n",
              s.plan().name(),
              s.trueHalfDas(),
              half(s.half()),
              of(s.doubles()),
              s.doubles().others(),
              of(s.empties()),
              s.empties().others()));
    }
    return text.toString();
  }

  private static String of(ScoreTray.Found found) {
    return found.found() + " of " + found.truth();
  }

  private static String half(Optional<Tray.HalfEmerged> half) {
    return half.map(
            h ->
                line("%.2f (%.2f to ", h.das(), h.lo95())
                    + (h.hi95().isPresent() ? line("%.2f)", h.hi95().getAsDouble()) : "open)"))
        .orElse("not yet");
  }

  private static String ages(List<ScoreTray> scores) {
    StringBuilder text =
        new StringBuilder(
            line(
                "%n## Seedlings that were not seen%n%n| days since it shows, up to | usual area up"
                    + " to, cm2 | not seen, 288 cells | not seen, 512 cells |%n| ---: | ---: | ---: |"
                    + " ---: |%n"));
    for (int i = 0; i < ScoreTray.AGES.size(); i++) {
      int at = i;
      double age = ScoreTray.AGES.get(i);
      text.append(
          line(
              "| %.2f | %.2f | %s | %s |%n",
              age,
              SowTray.areaCm2(age),
              lost(scores, TrayPlan.CELLS_288.name(), s -> s.lost().get(at)),
              lost(scores, TrayPlan.CELLS_512.name(), s -> s.lost().get(at))));
    }
    return text.toString();
  }

  private static String lost(
      List<ScoreTray> scores, String layout, Function<ScoreTray, ScoreTray.Lost> which) {
    int looks = 0;
    int lost = 0;
    for (ScoreTray score : scores) {
      if (score.plan().layout().name().equals(layout)) {
        looks += which.apply(score).looks();
        lost += which.apply(score).lost();
      }
    }
    return lost + " of " + looks;
  }

  private static String refusals(List<ScoreTray> scores) {
    StringBuilder text = new StringBuilder();
    for (ScoreTray score : scores) {
      score.refused().forEach(why -> text.append(line("- %s, %s%n", score.plan().name(), why)));
    }
    return text.isEmpty() ? "" : line("%n## Photos not measured%n%n") + text;
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
