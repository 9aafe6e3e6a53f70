// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.evening.CurveRow;
import org.raftgauge.core.growth.GrowthCurve;

/** Writes {@code curves.csv}: the growth curve of each raft's median plant and of each plant. */
public final class CurvesTable {
  private static final MathContext DIGITS = new MathContext(4);

  private static final List<String> HEADER =
      List.of(
          "scope",
          "raft",
          "site",
          "plant",
          "fitted",
          "reason",
          "model",
          "asymptote_cm2",
          "rate_per_day",
          "midpoint_dat",
          "shape",
          "parameters_se",
          "aicc",
          "r2_ln_area",
          "rgr_per_day",
          "rgr_lo95_per_day",
          "rgr_hi95_per_day",
          "days_to_target",
          "n_photos",
          "n_censored",
          "discounted",
          "pond",
          "crop",
          "dat",
          "parameters",
          "target_reason",
          "days_to_target_lo95",
          "days_to_target_hi95",
          "target_area_cm2");

  private CurvesTable() {}

  /**
   * Writes the table.
   *
   * @param curves in the order in which they are to stand
   * @return the text of the file
   */
  public static String csv(List<CurveRow> curves) {
    CsvText csv = new CsvText(HEADER);
    for (CurveRow row : curves) {
      place(csv, row);
      parameters(csv, row.curve());
      rate(csv, row.curve().flatMap(CurveRow.Curve::rate));
      rest(csv, row);
      csv.endRow();
    }
    return csv.toString();
  }

  private static void place(CsvText csv, CurveRow row) {
    csv.text(row.scope().word())
        .text(row.place().raft())
        .text(row.place().site().map(SiteId::toString).orElse(""))
        .text(row.place().plant())
        .flag(row.curve().isPresent())
        .text(row.reason());
  }

  private static void parameters(CsvText csv, Optional<CurveRow.Curve> curve) {
    csv.text(curve.map(c -> c.curve().model().name().toLowerCase(Locale.ROOT)).orElse(""))
        .number(curve.map(CurveRow.Curve::asymptoteCm2).orElse(OptionalDouble.empty()), 2)
        .number(parameter(curve, "rate_per_day"), 4)
        .number(parameter(curve, "midpoint_dat"), 2)
        .number(parameter(curve, "shape"), 3)
        .list(curve.map(c -> named(c.curve(), c.standardErrors())).orElse(List.of()))
        .number(curve.map(CurveRow.Curve::aicc).orElse(OptionalDouble.empty()), 2)
        .number(curve.map(CurveRow.Curve::r2LnArea).orElse(OptionalDouble.empty()), 4);
  }

  private static OptionalDouble parameter(Optional<CurveRow.Curve> curve, String name) {
    if (curve.isEmpty()) {
      return OptionalDouble.empty();
    }
    GrowthCurve of = curve.get().curve();
    int i = of.model().parameterNames().indexOf(name);
    return i < 0 ? OptionalDouble.empty() : OptionalDouble.of(of.parameters().get(i));
  }

  private static List<String> named(GrowthCurve curve, List<Double> values) {
    List<String> named = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      double value = values.get(i);
      if (Double.isFinite(value)) {
        String digits = new BigDecimal(value).round(DIGITS).toString();
        named.add(curve.model().parameterNames().get(i) + "=" + digits);
      }
    }
    return named;
  }

  private static void rate(CsvText csv, Optional<CurveRow.Rate> rate) {
    csv.number(of(rate, CurveRow.Rate::perDay), 4)
        .number(of(rate, CurveRow.Rate::lo95), 4)
        .number(of(rate, CurveRow.Rate::hi95), 4);
  }

  private static OptionalDouble of(
      Optional<CurveRow.Rate> rate, ToDoubleFunction<CurveRow.Rate> part) {
    return rate.stream().mapToDouble(part).filter(Double::isFinite).findFirst();
  }

  private static void rest(CsvText csv, CurveRow row) {
    Optional<CurveRow.Days> days = row.target().days();
    csv.number(days.map(d -> OptionalDouble.of(d.days())).orElse(OptionalDouble.empty()), 1)
        .number(row.points().photos())
        .number(row.points().closed())
        .list(
            row.points().discountedDat().stream()
                .map(d -> String.format(Locale.ROOT, "%.2f", d))
                .toList())
        .text(row.place().pond())
        .text(row.place().crop())
        .number(row.points().lastDat(), 3)
        .list(row.curve().map(c -> named(c.curve(), c.curve().parameters())).orElse(List.of()))
        .text(row.target().reason())
        .number(days.map(CurveRow.Days::lo95).orElse(OptionalDouble.empty()), 1)
        .number(days.map(CurveRow.Days::hi95).orElse(OptionalDouble.empty()), 1)
        .number(row.target().areaCm2(), 1);
  }
}
