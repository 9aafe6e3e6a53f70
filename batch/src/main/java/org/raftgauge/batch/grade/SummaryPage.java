// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.HeightFit;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;

/** The one-page summary of a grader. */
final class SummaryPage {

  private SummaryPage() {}

  static String of(Grader grader, Map<String, String> plots, List<String> lines)
      throws IOException {
    List<Map<String, Object>> regimes = new ArrayList<>();
    grader.fits().forEach((regime, fit) -> regimes.add(regime(regime, fit)));
    Map<String, Object> values = new HashMap<>();
    values.put("crop", grader.crop());
    values.put("origin", origin(grader.origin()));
    values.put("regimes", regimes);
    values.put("refused", grader.refused().values());
    values.put("height", grader.height().map(SummaryPage::height).orElse(""));
    values.put("lines", lines);
    values.put("plots", plots.values());
    return Page.fill("summary.ftlh", values);
  }

  private static Map<String, String> origin(Grader.Origin origin) {
    Map<String, String> rows = new java.util.LinkedHashMap<>();
    rows.put("fitted at", origin.fittedAt());
    rows.put("by", "raftgauge " + origin.program());
    rows.put("plants weighed", origin.state());
    rows.put("first weighing", origin.firstWeighed());
    rows.put("last weighing", origin.lastWeighed());
    rows.put("photo within, hours", text("%.0f", origin.matchHours()));
    rows.put("from", origin.source());
    return rows;
  }

  private static Map<String, Object> regime(Regime regime, RegimeFit fit) {
    RegimeFit.Numbers n = fit.numbers();
    Map<String, String> rows = new java.util.LinkedHashMap<>();
    rows.put("weighings", text("%d", n.weighings()));
    rows.put("told from", String.join(", ", n.terms().stream().map(Object::toString).toList()));
    rows.put("fitted by", n.estimator());
    rows.put(
        "a single plant, left out in turn, is missed by",
        text(
            "%.1f %% on average, median %.1f %%",
            100 * n.leftOut().meanShare(), 100 * n.leftOut().medianShare()));
    rows.put(
        "9 of 10 plants weigh",
        text(
            "%.2f to %.2f times the predicted weight",
            Math.exp(-1.645 * n.residualSd()), Math.exp(1.645 * n.residualSd())));
    rows.put(
        "bias and limits of agreement",
        text(
            "%+.1f %%, %+.0f %% to %+.0f %%",
            100 * n.agreement().biasShare(),
            100 * n.agreement().lowerShare(),
            100 * n.agreement().upperShare()));
    rows.put("smearing factor", text("%.4f", n.smearing()));
    rows.put(
        "weighings cover",
        text("%.0f to %.0f g", n.validity().lightestG(), n.validity().heaviestG()));
    n.validity()
        .ranges()
        .forEach(
            (size, range) ->
                rows.put(size.column(), text("%.0f to %.0f", range.from(), range.to())));
    rows.put("varieties", String.join(", ", n.validity().varieties()));
    rows.put(
        "weighings for a total within 5 % by calibration",
        text("about %d", fit.weighingsFor(0.05)));
    return Map.of("name", regime.toString(), "rows", rows);
  }

  private static String height(HeightFit height) {
    return text(
        "height_model: {scale_mm: %.4f, exponent: %.4f, mean_to_top: %.3f}  (%d top heights; spread"
            + " %.0f %%; mean over top %s, standard error %.3f)",
        height.model().scaleMm(),
        height.exponent(),
        height.meanToTop(),
        height.heights(),
        100 * Math.expm1(height.sdLn()),
        height.meanToTopMeasured() ? "measured" : "a guess between cone and dome",
        height.meanToTopSe());
  }

  static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
