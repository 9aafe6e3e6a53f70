// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.table.NumberRange;

/** Reads a taught colour model, {@code colour/NAME.yaml}. */
final class ColourReader {
  private static final NumberRange COORDINATE = NumberRange.from(-20, 20);
  private static final NumberRange WEIGHT = NumberRange.from(-1e6, 1e6);
  private static final NumberRange SPREAD = NumberRange.from(1e-6, 1e6);
  private static final String REMEDY = "teach it again with raftgauge teach, or restore the file";

  private ColourReader() {}

  /** Reads a model; nothing where it cannot be used, with an error. */
  static Optional<TaughtColour> read(String name, Path file, Findings findings) {
    int before = findings.errors();
    Optional<TaughtColour> model =
        YamlFile.read(file, "colour/" + file.getFileName(), findings)
            .flatMap(map -> model(name, map, before));
    return findings.errors() > before ? Optional.empty() : model;
  }

  /** Reads a model from its file's text. */
  static Optional<TaughtColour> parse(String name, String text, Findings findings) {
    int before = findings.errors();
    Optional<TaughtColour> model =
        YamlFile.parse(text, "colour/" + name + ".yaml", findings)
            .flatMap(map -> model(name, map, before));
    return findings.errors() > before ? Optional.empty() : model;
  }

  private static Optional<TaughtColour> model(String name, YamlMap map, int before) {
    // Where it comes from is for people; nothing of it is measured by.
    Stream.of("crop", "made_by", "pictures", "cross_validation", "note").forEach(map::value);
    List<Double> least = range(map, "least");
    List<Double> most = range(map, "most");
    Map<Tissue, List<Double>> weights =
        map.requiredMap("weights").map(ColourReader::weights).orElse(Map.of());
    Optional<TaughtGround> ground = map.value("ground").flatMap(ColourReader::ground);
    map.finish();
    if (map.findings().errors() > before) {
      return Optional.empty();
    }
    return ordered(map, new TaughtColour(name, least, most, weights, ground));
  }

  private static Optional<TaughtColour> ordered(YamlMap map, TaughtColour model) {
    for (int i = 0; i < 3; i++) {
      if (model.most().get(i) <= model.least().get(i)) {
        map.findings().error(map.place(), "most is not over least", REMEDY);
        return Optional.empty();
      }
    }
    boolean leaf = model.weights().keySet().stream().anyMatch(Tissue::isLeaf);
    boolean other = model.weights().keySet().stream().anyMatch(t -> !t.isLeaf());
    if (!leaf || !other) {
      map.findings().error(map.place(), "the weights tell no leaf from what is not", REMEDY);
      return Optional.empty();
    }
    return Optional.of(model);
  }

  private static Optional<TaughtGround> ground(YamlValue value) {
    if (value.isList()) {
      value.error("the look at open ground was taught by an earlier version", REMEDY);
      return Optional.empty();
    }
    return value.map().flatMap(ColourReader::network);
  }

  private static Optional<TaughtGround> network(YamlMap map) {
    int terms = TaughtGround.TERMS;
    Optional<List<Double>> middle = numbers(map, "middle", terms, WEIGHT);
    Optional<List<Double>> spread = numbers(map, "spread", terms, SPREAD);
    List<List<Double>> units =
        map.required("units").map(YamlValue::list).orElse(List.of()).stream()
            .flatMap(unit -> unit.numbers(terms + 1, WEIGHT).stream())
            .toList();
    Optional<List<Double>> output = numbers(map, "output", units.size() + 1, WEIGHT);
    map.finish();
    return middle.isEmpty() || spread.isEmpty() || units.isEmpty() || output.isEmpty()
        ? Optional.empty()
        : Optional.of(new TaughtGround(middle.get(), spread.get(), units, output.get()));
  }

  private static Optional<List<Double>> numbers(
      YamlMap map, String key, int count, NumberRange range) {
    return map.required(key).flatMap(value -> value.numbers(count, range));
  }

  private static List<Double> range(YamlMap map, String key) {
    return map.required(key).flatMap(v -> v.numbers(3, COORDINATE)).orElse(List.of(0.0, 0.0, 0.0));
  }

  private static Map<Tissue, List<Double>> weights(YamlMap map) {
    Map<Tissue, List<Double>> weights = new EnumMap<>(Tissue.class);
    for (String key : List.copyOf(map.keys())) {
      YamlValue value = map.value(key).orElseThrow();
      Optional<Tissue> tissue = Tissue.labelled(key);
      if (tissue.isEmpty()) {
        List<String> known = Stream.of(Tissue.values()).map(Tissue::label).toList();
        map.findings()
            .error(
                value.keyPlace(),
                "the tissue \"" + key + "\" is unknown",
                NearestSpelling.remedy(key, known));
      } else {
        value
            .numbers(TaughtColour.COLOUR_TERMS, WEIGHT)
            .ifPresent(w -> weights.put(tissue.get(), w));
      }
    }
    return weights;
  }
}
