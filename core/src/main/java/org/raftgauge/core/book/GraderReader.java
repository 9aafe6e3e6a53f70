// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.NumberRange;

/** Reads a grader file, with place and remedy for what is wrong. */
public final class GraderReader {
  /** Texts of a grader's origin, in the file's order. */
  public static final List<String> ORIGIN =
      List.of("fitted_at", "program", "state", "first_weighed", "last_weighed", "source");

  /** Single numbers of a fit, in the file's order. */
  public static final List<String> NUMBERS =
      List.of(
          "weighings",
          "degrees_of_freedom",
          "residual_sd_ln",
          "smearing",
          "left_out_mean_share",
          "left_out_median_share",
          "left_out_sd_ln",
          "bias_share",
          "lower_share",
          "upper_share",
          "trend_p",
          "lightest_g",
          "heaviest_g");

  /** Single numbers of a height model, in the file's order. */
  public static final List<String> HEIGHT =
      List.of(
          "top_scale_mm",
          "exponent",
          "exponent_se",
          "sd_ln",
          "mean_to_top",
          "mean_to_top_se",
          "heights");

  /** Names of the regimes. */
  public static final List<String> REGIMES = List.of("open", "closed");

  private static final NumberRange ANY = NumberRange.from(-1e12, 1e12);
  private static final NumberRange ABOVE = NumberRange.aboveZero(1e12);

  private GraderReader() {}

  /**
   * Reads a file.
   *
   * @param file the file, in {@code graders/}
   * @param findings takes what is wrong
   * @return what it says, or nothing where it cannot be used
   */
  public static Optional<GraderSheet> read(Path file, Findings findings) {
    String name = file.getFileName().toString();
    return YamlFile.read(file, "graders/" + name, findings)
        .flatMap(map -> sheet(name.replaceFirst("\\.yaml$", ""), map));
  }

  private static Optional<GraderSheet> sheet(String name, YamlMap map) {
    int errorsBefore = map.findings().errors();
    String crop = map.requiredText("crop").orElse("");
    Map<String, String> origin = new LinkedHashMap<>();
    ORIGIN.forEach(key -> origin.put(key, map.requiredText(key).orElse("")));
    double hours = map.requiredNumber("match_hours", NumberRange.aboveZero(10_000));
    Map<String, GraderSheet.Fit> regimes = new LinkedHashMap<>();
    map.requiredMap("regimes").ifPresent(all -> regimes(all, regimes));
    Map<String, String> refused = new LinkedHashMap<>();
    map.map("refused")
        .ifPresent(
            all -> {
              REGIMES.forEach(r -> all.text(r).ifPresent(why -> refused.put(r, why)));
              all.finish();
            });
    Optional<GraderSheet.Height> height = map.map("height").map(GraderReader::height);
    List<String> remarks = texts(map.value("remarks"));
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(
            new GraderSheet(name, crop, origin, hours, regimes, refused, height, remarks));
  }

  private static void regimes(YamlMap all, Map<String, GraderSheet.Fit> regimes) {
    for (String regime : REGIMES) {
      all.map(regime).ifPresent(fit -> regimes.put(regime, fit(fit)));
    }
    all.finish();
    if (regimes.isEmpty() && all.findings().errors() == 0) {
      all.findings().error(all.place(), "there is no regime", "fit the grader again");
    }
  }

  private static GraderSheet.Fit fit(YamlMap map) {
    List<String> terms = texts(map.required("terms"));
    int p = terms.size();
    List<Double> coefficients =
        map.required("coefficients").flatMap(c -> c.numbers(p, ANY)).orElse(List.of());
    List<List<Double>> covariance = new ArrayList<>();
    map.required("covariance")
        .ifPresent(
            rows -> rows.list().forEach(row -> row.numbers(p, ANY).ifPresent(covariance::add)));
    if (covariance.size() != p && map.findings().errors() == 0) {
      map.value("covariance")
          .get()
          .error("the list has " + covariance.size() + " rows", "write a row for each term");
    }
    Map<String, Double> numbers = numbers(map, NUMBERS);
    Map<String, List<Double>> ranges = new LinkedHashMap<>();
    map.requiredMap("ranges")
        .ifPresent(
            all ->
                List.copyOf(all.keys())
                    .forEach(
                        key ->
                            all.value(key)
                                .flatMap(v -> v.numbers(2, ABOVE))
                                .ifPresent(range -> ranges.put(key, range))));
    String estimator = map.requiredText("estimator").orElse("");
    List<String> varieties =
        map.required("varieties").map(GraderReader::maybeBlank).orElse(List.of());
    map.finish();
    return new GraderSheet.Fit(
        terms, coefficients, covariance, numbers, ranges, estimator, varieties);
  }

  private static GraderSheet.Height height(YamlMap map) {
    Map<String, Double> numbers = numbers(map, HEIGHT);
    boolean measured = map.requiredText("mean_to_top_from").orElse("").equals("measured");
    map.finish();
    return new GraderSheet.Height(numbers, measured);
  }

  private static Map<String, Double> numbers(YamlMap map, List<String> keys) {
    Map<String, Double> numbers = new LinkedHashMap<>();
    keys.forEach(key -> numbers.put(key, map.requiredNumber(key, ANY)));
    return numbers;
  }

  private static List<String> texts(Optional<YamlValue> value) {
    return value.stream()
        .flatMap(v -> v.list().stream())
        .flatMap(item -> item.text().stream())
        .toList();
  }

  /** Reads names of which one may be empty: plants of no variety. */
  private static List<String> maybeBlank(YamlValue value) {
    List<String> names = new ArrayList<>();
    for (YamlValue item : value.list()) {
      boolean blank =
          item.node() instanceof org.yaml.snakeyaml.nodes.ScalarNode scalar
              && scalar.getValue().isEmpty();
      if (blank) {
        names.add("");
      } else {
        item.text().ifPresent(names::add);
      }
    }
    return names;
  }
}
