// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * Writes a grader as the readable file of {@code graders/}; {@link ReadGrader} makes it again from
 * there.
 */
public final class GraderFile {
  private static final Map<String, ToDoubleFunction<RegimeFit.Numbers>> NUMBERS = numbersOfFit();
  private static final Map<String, ToDoubleFunction<HeightFit>> HEIGHT = numbersOfHeight();

  private GraderFile() {}

  private static Map<String, ToDoubleFunction<RegimeFit.Numbers>> numbersOfFit() {
    Map<String, ToDoubleFunction<RegimeFit.Numbers>> all = new LinkedHashMap<>();
    all.put("weighings", RegimeFit.Numbers::weighings);
    all.put("degrees_of_freedom", RegimeFit.Numbers::degreesOfFreedom);
    all.put("residual_sd_ln", RegimeFit.Numbers::residualSd);
    all.put("smearing", RegimeFit.Numbers::smearing);
    all.put("left_out_mean_share", n -> n.leftOut().meanShare());
    all.put("left_out_median_share", n -> n.leftOut().medianShare());
    all.put("left_out_sd_ln", n -> n.leftOut().sdLn());
    all.put("bias_share", n -> n.agreement().biasShare());
    all.put("lower_share", n -> n.agreement().lowerShare());
    all.put("upper_share", n -> n.agreement().upperShare());
    all.put("trend_p", n -> n.agreement().trendP());
    all.put("lightest_g", n -> n.validity().lightestG());
    all.put("heaviest_g", n -> n.validity().heaviestG());
    return Collections.unmodifiableMap(all);
  }

  private static Map<String, ToDoubleFunction<HeightFit>> numbersOfHeight() {
    Map<String, ToDoubleFunction<HeightFit>> all = new LinkedHashMap<>();
    all.put("top_scale_mm", HeightFit::topScaleMm);
    all.put("exponent", HeightFit::exponent);
    all.put("exponent_se", HeightFit::exponentSe);
    all.put("sd_ln", HeightFit::sdLn);
    all.put("mean_to_top", HeightFit::meanToTop);
    all.put("mean_to_top_se", HeightFit::meanToTopSe);
    all.put("heights", HeightFit::heights);
    return Collections.unmodifiableMap(all);
  }

  /**
   * Writes a grader.
   *
   * @param grader the grader
   * @return the file's text, YAML
   */
  public static String write(Grader grader) {
    StringBuilder out = new StringBuilder();
    out.append(
            "# A grader: fresh weight from what the camera sees, fitted by raftgauge grader fit.\n")
        .append("# Weights are estimates from pictures, not legal-for-trade weighing.\n")
        .append("# ln(weight in g) = sum of coefficient * term; sizes in cm2 and mm.\n");
    line(out, 0, "crop", quoted(grader.crop()));
    line(out, 0, "fitted_at", quoted(grader.origin().fittedAt()));
    line(out, 0, "program", quoted(grader.origin().program()));
    line(out, 0, "state", quoted(grader.origin().state()));
    line(out, 0, "first_weighed", quoted(grader.origin().firstWeighed()));
    line(out, 0, "last_weighed", quoted(grader.origin().lastWeighed()));
    line(out, 0, "source", quoted(grader.origin().source()));
    line(out, 0, "match_hours", number(grader.origin().matchHours()));
    out.append("regimes:\n");
    grader.fits().forEach((regime, fit) -> regime(out, regime, fit));
    if (!grader.refused().isEmpty()) {
      out.append("refused:\n");
      grader.refused().forEach((regime, why) -> line(out, 1, regime.toString(), quoted(why)));
    }
    grader.height().ifPresent(height -> height(out, height));
    list(out, 0, "remarks", grader.remarks());
    return out.toString();
  }

  private static void regime(StringBuilder out, Regime regime, RegimeFit fit) {
    out.append("  ").append(regime).append(":\n");
    line(out, 2, "estimator", fit.numbers().estimator());
    list(out, 2, "terms", fit.numbers().terms().stream().map(Term::toString).toList());
    line(out, 2, "coefficients", numbers(fit.coefficients()));
    out.append("    covariance:\n");
    for (double[] row : fit.covariance()) {
      out.append("      - ").append(numbers(row)).append('\n');
    }
    NUMBERS.forEach((key, value) -> line(out, 2, key, number(value.applyAsDouble(fit.numbers()))));
    out.append("    ranges:\n");
    fit.numbers()
        .validity()
        .ranges()
        .forEach((size, range) -> line(out, 3, size.column(), numbers(range.from(), range.to())));
    list(out, 2, "varieties", List.copyOf(fit.numbers().validity().varieties()));
  }

  private static void height(StringBuilder out, HeightFit height) {
    out.append("height:\n");
    HEIGHT.forEach((key, value) -> line(out, 1, key, number(value.applyAsDouble(height))));
    line(out, 1, "mean_to_top_from", height.meanToTopMeasured() ? "measured" : "a guess");
  }

  private static void line(StringBuilder out, int depth, String key, String value) {
    out.append("  ".repeat(depth)).append(key).append(": ").append(value).append('\n');
  }

  private static void list(StringBuilder out, int depth, String key, List<String> texts) {
    line(
        out,
        depth,
        key,
        texts.stream().map(GraderFile::quoted).collect(Collectors.joining(", ", "[", "]")));
  }

  private static String quoted(String text) {
    return '"'
        + text.replace("\\", "\\\\").replace("\"", "\\\"").replaceAll("\\p{Cntrl}", " ")
        + '"';
  }

  private static String numbers(double... values) {
    List<String> texts = new ArrayList<>();
    for (double value : values) {
      texts.add(number(value));
    }
    return texts.stream().collect(Collectors.joining(", ", "[", "]"));
  }

  /** Writes all digits, so that the grader read back is the same. */
  private static String number(double value) {
    boolean whole = value == Math.rint(value) && Math.abs(value) < 1e9;
    return whole ? String.format(Locale.ROOT, "%.0f", value) : Double.toString(value);
  }
}
