// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.raftgauge.core.book.GraderSheet;
import org.raftgauge.core.problem.Findings;

/** Makes a grader from its file. */
public final class ReadGrader {

  private ReadGrader() {}

  /**
   * Makes a grader from its file.
   *
   * @param sheet what the file says
   * @param findings takes what is wrong
   * @return the grader, or nothing where it cannot be used
   */
  public static Optional<Grader> from(GraderSheet sheet, Findings findings) {
    Map<Regime, RegimeFit> fits = new EnumMap<>(Regime.class);
    Map<Regime, String> refused = new EnumMap<>(Regime.class);
    int errorsBefore = findings.errors();
    for (Regime regime : Regime.values()) {
      GraderSheet.Fit fit = sheet.regimes().get(regime.toString());
      if (fit != null) {
        String place = "graders/" + sheet.name() + ".yaml: regimes." + regime;
        fit(fit, place, findings).ifPresent(f -> fits.put(regime, f));
      }
      if (sheet.refused().containsKey(regime.toString())) {
        refused.put(regime, sheet.refused().get(regime.toString()));
      }
    }
    Map<String, String> from = sheet.origin();
    Grader.Origin origin =
        new Grader.Origin(
            from.get("fitted_at"),
            from.get("program"),
            from.get("state"),
            from.get("first_weighed"),
            from.get("last_weighed"),
            sheet.matchHours(),
            from.get("source"));
    return findings.errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(
            new Grader(
                sheet.crop(),
                origin,
                fits,
                refused,
                sheet.height().map(ReadGrader::height),
                sheet.remarks()));
  }

  private static Optional<RegimeFit> fit(GraderSheet.Fit sheet, String place, Findings findings) {
    List<Term> terms = new ArrayList<>();
    for (String text : sheet.terms()) {
      Optional<Term> term = Term.parse(text);
      term.ifPresent(terms::add);
      if (term.isEmpty()) {
        findings.error(
            place + ".terms",
            "\"" + text + "\" is not a term",
            "write 1, ln area_cm2, ln top_height_mm or ln curve_area_cm2, joined by *");
      }
    }
    Map<Size, Validity.Range> ranges = new EnumMap<>(Size.class);
    for (Size size : Size.values()) {
      List<Double> range = sheet.ranges().get(size.column());
      if (range != null) {
        ranges.put(size, new Validity.Range(range.get(0), range.get(1)));
      }
    }
    Map<String, Double> n = sheet.numbers();
    if (n.get("degrees_of_freedom") < 1 || n.get("residual_sd_ln") < 0) {
      findings.error(place, "degrees_of_freedom or residual_sd_ln is too small", "fit it again");
    }
    if (terms.size() < sheet.terms().size() || n.get("degrees_of_freedom") < 1) {
      return Optional.empty();
    }
    RegimeFit.Numbers numbers =
        new RegimeFit.Numbers(
            terms,
            sheet.estimator(),
            n.get("residual_sd_ln"),
            n.get("degrees_of_freedom").intValue(),
            n.get("smearing"),
            n.get("weighings").intValue(),
            new LeftOut(
                n.get("left_out_mean_share"),
                n.get("left_out_median_share"),
                n.get("left_out_sd_ln")),
            new RegimeFit.Limits(
                n.get("bias_share"), n.get("lower_share"), n.get("upper_share"), n.get("trend_p")),
            new Validity(
                ranges,
                n.get("lightest_g"),
                n.get("heaviest_g"),
                new TreeSet<>(sheet.varieties())));
    return Optional.of(
        new RegimeFit(
            numbers,
            sheet.coefficients().stream().mapToDouble(v -> v).toArray(),
            sheet.covariance().stream()
                .map(row -> row.stream().mapToDouble(v -> v).toArray())
                .toArray(double[][]::new)));
  }

  private static HeightFit height(GraderSheet.Height sheet) {
    Map<String, Double> n = sheet.numbers();
    return new HeightFit(
        n.get("top_scale_mm"),
        n.get("exponent"),
        n.get("exponent_se"),
        n.get("sd_ln"),
        n.get("mean_to_top"),
        n.get("mean_to_top_se"),
        sheet.meanToTopMeasured(),
        n.get("heights").intValue());
  }
}
