// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.table.NumberRange;

/** Reads one crop of {@code crops.yaml}, with its varieties. */
final class CropReader {
  private static final NumberRange SHARE = NumberRange.from(0, 1);
  private static final NumberRange DAYS = NumberRange.from(0, 400);
  private static final NumberRange WEIGHT_G = NumberRange.aboveZero(20_000);

  /** Mean over top height of a canopy where nothing is known: a guess of the design. */
  private static final double MEAN_TO_TOP = 0.5;

  private final List<String> colourModels;
  private final Map<String, Optional<TaughtColour>> taught;
  private final List<String> graders;
  private final Broken broken;

  /** Knows the built-in colour models, the taught ones where they can be used, and graders. */
  CropReader(
      List<String> builtIn,
      Map<String, Optional<TaughtColour>> taught,
      List<String> graders,
      Broken broken) {
    this.colourModels = new ArrayList<>(builtIn);
    this.colourModels.addAll(taught.keySet());
    this.taught = taught;
    this.graders = graders;
    this.broken = broken;
  }

  /**
   * Reads a crop and its varieties, by {@link CropBook#cropKey}; a variety takes from the crop what
   * it does not say itself. Nothing at all where the crop itself is wrong.
   */
  Map<String, Crop> read(String name, YamlValue value) {
    Map<String, Crop> crops = new LinkedHashMap<>();
    Optional<YamlMap> map = broken.watch("crop " + name, value::map);
    Optional<YamlMap> varieties = map.flatMap(m -> m.map("varieties"));
    Optional<Crop> crop =
        map.flatMap(m -> broken.watch("crop " + name, () -> crop(name, m, Optional.empty())));
    crop.ifPresent(c -> crops.put(name, c));
    for (String variety : varieties.map(v -> List.copyOf(v.keys())).orElse(List.of())) {
      String key = CropBook.cropKey(name, variety);
      broken
          .watch(
              "crop " + key,
              () ->
                  varieties
                      .flatMap(v -> v.value(variety))
                      .filter(v -> Names.check(variety, v::keyError))
                      .flatMap(YamlValue::map)
                      .flatMap(v -> crop(name, v, crop)))
          .filter(v -> crop.isPresent())
          .ifPresent(v -> crops.put(key, v));
    }
    return crops;
  }

  private Optional<Crop> crop(String name, YamlMap map, Optional<Crop> base) {
    Findings findings = map.findings();
    int errorsBefore = findings.errors();
    Optional<String> colour = colourModel(map, base);
    Optional<HeightModel> height =
        (base.isPresent() ? map.map("height_model") : map.requiredMap("height_model"))
            .flatMap(CropReader::heightModel)
            .or(() -> base.map(Crop::heightModel));
    OptionalDouble emerged = map.number("emerged_by_das", DAYS);
    Crop.Limits baseLimits = base.map(Crop::limits).orElse(Crop.Limits.defaults());
    Crop.Limits limits = map.map("limits").map(l -> limits(l, baseLimits)).orElse(baseLimits);
    Optional<Harvest> harvest =
        map.map("harvest").flatMap(CropReader::harvest).or(() -> base.flatMap(Crop::harvest));
    Optional<String> grader = grader(map).or(() -> base.flatMap(Crop::grader));
    map.finish();
    if (findings.errors() > errorsBefore) {
      return Optional.empty();
    }
    OptionalDouble emergedByDas =
        emerged.isPresent() ? emerged : base.map(Crop::emergedByDas).orElse(OptionalDouble.empty());
    return Optional.of(
        new Crop(
            name,
            colour.orElseThrow(),
            taught.getOrDefault(colour.get(), Optional.empty()),
            height.orElseThrow(),
            emergedByDas,
            limits,
            harvest,
            grader));
  }

  private Optional<String> colourModel(YamlMap map, Optional<Crop> base) {
    Optional<YamlValue> value =
        base.isPresent() ? map.value("colour_model") : map.required("colour_model");
    Optional<String> model = value.flatMap(YamlValue::text);
    model
        .filter(m -> !colourModels.contains(m))
        .ifPresent(m -> value.get().unknown("colour model", m, colourModels));
    return model.or(() -> base.map(Crop::colourModel));
  }

  /** Reads the grader's name; one that is not there yet costs the weights only. */
  private Optional<String> grader(YamlMap map) {
    Optional<YamlValue> value = map.value("grader");
    Optional<String> name = value.flatMap(YamlValue::text);
    name.filter(n -> !graders.contains(n))
        .ifPresent(
            n ->
                map.findings()
                    .warning(
                        value.get().place(),
                        "there is no graders/" + n + ".yaml, so this crop gets no weights",
                        graders.isEmpty()
                            ? "make one with raftgauge grader fit"
                            : NearestSpelling.remedy(n, graders)));
    return name.filter(graders::contains);
  }

  private static Optional<HeightModel> heightModel(YamlMap map) {
    int errorsBefore = map.findings().errors();
    double scale = map.requiredNumber("scale_mm", NumberRange.from(0, 1000));
    double exponent = map.requiredNumber("exponent", NumberRange.from(0, 2));
    double meanToTop = map.number("mean_to_top", NumberRange.aboveZero(1)).orElse(MEAN_TO_TOP);
    map.finish();
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new HeightModel(scale, exponent, meanToTop));
  }

  private static Crop.Limits limits(YamlMap map, Crop.Limits base) {
    Crop.Limits limits =
        new Crop.Limits(
            map.number("lagging_share", SHARE).orElse(base.laggingShare()),
            map.number("ahead_share", NumberRange.from(1, 10)).orElse(base.aheadShare()),
            map.number("closed_outline", SHARE).orElse(base.closedOutline()));
    map.finish();
    return limits;
  }

  private static Optional<Harvest> harvest(YamlMap map) {
    int errorsBefore = map.findings().errors();
    double head = map.requiredNumber("head_weight_g", WEIGHT_G);
    double minimum = map.number("minimum_g", NumberRange.from(0, 20_000)).orElse(0);
    double ready = map.number("ready_share", NumberRange.aboveZero(1)).orElse(0.9);
    List<Double> window =
        map.required("window_dat").flatMap(w -> w.numbers(2, DAYS)).orElse(List.of(0.0, 0.0));
    double trim = map.number("trim_share", NumberRange.from(0, 0.95)).orElse(0);
    OptionalDouble pack = map.number("pack_g", WEIGHT_G);
    map.finish();
    if (minimum > head && head > 0) {
      map.value("minimum_g").get().error("the minimum is over head_weight_g", "write less");
    }
    if (window.get(1) < window.get(0)) {
      map.value("window_dat").get().error("the window ends before it begins", "swap the two days");
    }
    return map.findings().errors() > errorsBefore
        ? Optional.empty()
        : Optional.of(new Harvest(head, minimum, ready, window.get(0), window.get(1), trim, pack));
  }
}
