// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.table.NumberRange;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * Reads the keys of one YAML map as what they should be; {@link #finish()} reports the keys that
 * nobody asked for. A key that is not what it should be is added to the findings and read as
 * absent.
 */
final class YamlMap {
  private final String file;
  private final String path;
  private final Node node;
  private final Findings findings;
  private final Map<String, YamlValue> values = new LinkedHashMap<>();
  private final Set<String> asked = new LinkedHashSet<>();

  YamlMap(String file, String path, MappingNode node, Findings findings) {
    this.file = file;
    this.path = path;
    this.node = node;
    this.findings = findings;
    DecimalComma.mended(node).forEach(this::take);
  }

  private void take(NodeTuple entry) {
    if (!(entry.getKeyNode() instanceof ScalarNode keyNode)) {
      findings.error(
          YamlValue.place(file, entry.getKeyNode(), path),
          "a key is not a word",
          "write key: value");
      return;
    }
    String key = keyNode.getValue();
    String full = path.isEmpty() ? key : path + "." + key;
    YamlValue value = new YamlValue(file, full, keyNode, entry.getValueNode(), findings);
    YamlValue earlier = values.putIfAbsent(key, value);
    if (earlier != null) {
      findings.error(
          value.keyPlace(),
          "the key stands twice, first on line " + earlier.keyLine(),
          "keep one of the two");
    }
  }

  /** Returns where this map begins, with its path. */
  String place() {
    return YamlValue.place(file, node, path);
  }

  Findings findings() {
    return findings;
  }

  /** Returns all keys in the file's order and counts them as asked for. */
  Set<String> keys() {
    asked.addAll(values.keySet());
    return values.keySet();
  }

  boolean has(String key) {
    asked.add(key);
    return values.containsKey(key);
  }

  Optional<YamlValue> value(String key) {
    asked.add(key);
    return Optional.ofNullable(values.get(key));
  }

  Optional<YamlValue> required(String key) {
    Optional<YamlValue> value = value(key);
    if (value.isEmpty()) {
      findings.error(place(), "the key " + key + " is missing", "add " + key + ": ...");
    }
    return value;
  }

  Optional<String> text(String key) {
    return value(key).flatMap(YamlValue::text);
  }

  Optional<String> requiredText(String key) {
    return required(key).flatMap(YamlValue::text);
  }

  OptionalDouble number(String key, NumberRange range) {
    return orAbsent(value(key).map(value -> value.number(range)));
  }

  /** Reads a number that must be there; 0 where it is not, with an error. */
  double requiredNumber(String key, NumberRange range) {
    return orAbsent(required(key).map(value -> value.number(range))).orElse(0);
  }

  private static OptionalDouble orAbsent(Optional<OptionalDouble> number) {
    return number.orElse(OptionalDouble.empty());
  }

  /** Reads a whole number that must be there; 0 where it is not, with an error. */
  int requiredWhole(String key, NumberRange range) {
    return required(key).map(value -> value.whole(range)).orElse(0);
  }

  Optional<YamlMap> map(String key) {
    return value(key).flatMap(YamlValue::map);
  }

  Optional<YamlMap> requiredMap(String key) {
    return required(key).flatMap(YamlValue::map);
  }

  /** Reads one of an enum's lower-case names. */
  <E extends Enum<E>> Optional<E> choice(String key, E[] choices) {
    return value(key).flatMap(value -> value.choice(choices));
  }

  /** Reports every key that was not asked for. */
  void finish() {
    List<String> free = new ArrayList<>(asked);
    free.removeAll(values.keySet());
    List<String> known = free.isEmpty() ? List.copyOf(asked) : free;
    values.forEach(
        (key, value) -> {
          if (!asked.contains(key)) {
            findings.error(
                value.keyPlace(),
                "the key \"" + key + "\" is unknown",
                NearestSpelling.remedy(key, known));
          }
        });
  }
}
