// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The part of the page on seasons whose photos are rendered. */
final class RenderedSection {
  private RenderedSection() {}

  /** Makes the seasons and words what came of them. */
  static String of(long seed, Path work) throws IOException {
    StringBuilder text = new StringBuilder("\n## Seasons with rendered photos\n\n");
    SeasonSetting s = SeasonSetting.photographed(false);
    text.append(
        String.format(
            Locale.ROOT,
            "Three seasons as above (`--rendered --seed %d`), %d rafts tonight, but every plant is grown as a mesh at its"
                + " size of the day and photographed from 1.6 m at 1.25 mm a pixel, light and place drawn anew"
                + " for each photo; the photos go through `run`, `grader fit` and `forecast` as a grower's do."
                + " Holes are 260 mm apart, or 180 mm where leaves are to close. Three seasons are an"
                + " indication that the whole way holds, no statistics. \"By simulated areas\": the same season"
                + " without photos, closed sites as simulated above.%n%n",
            seed,
            s.rafts()));
    text.append(
        "| season | photos | open sites' area, median error | closed tonight | raft totals 5 days ahead"
            + " | in the 80 %% interval | by simulated areas | ready day off, days |\n"
                .replace("%%", "%"));
    text.append("| --- | ---: | ---: | ---: | --- | ---: | --- | --- |\n");
    for (RenderedSeason.Kind kind : RenderedSeason.KINDS) {
      text.append(row(RenderedSeason.of(kind, seed, work)));
    }
    return text.toString();
  }

  private static String row(RenderedSeason season) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %.1f %% of %d | %d of %d | %s | %d of %d | %s | %s |%n",
        season.kind.words(),
        season.photos,
        100 * HarvestScore.quantile(season.areaErrors, 0.5),
        season.areaErrors.size(),
        season.closedTonight,
        season.sitesTonight,
        percents(season.errors),
        season.inside80,
        season.errors.size(),
        percents(season.simulated.signed),
        season.readyOff.stream()
            .map(off -> String.format(Locale.ROOT, "%+d", off))
            .collect(Collectors.joining(", ")));
  }

  private static String percents(List<Double> errors) {
    return errors.stream()
        .map(e -> String.format(Locale.ROOT, "%+.1f %%", 100 * e))
        .collect(Collectors.joining(", "));
  }
}
