// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.table.DateText;
import org.raftgauge.core.table.NumberRange;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * One value of a YAML file with its place. Scalars are read from their text as it stands, so that
 * no word or time turns into something else ({@code no}, {@code 04:00}).
 *
 * @param file the file's name as shown to the user
 * @param path the keys that lead to it, joined by dots
 * @param key the node of its key, or of the list's item itself
 * @param node its own node
 * @param findings takes what is wrong
 */
record YamlValue(String file, String path, Node key, Node node, Findings findings) {

  static String place(String file, Node node, String path) {
    Mark mark = node.getStartMark();
    String at = file + ":" + (mark.getLine() + 1) + ":" + (mark.getColumn() + 1);
    return path.isEmpty() ? at : at + ": " + path;
  }

  String place() {
    return place(file, node, path);
  }

  String keyPlace() {
    return place(file, key, path);
  }

  int keyLine() {
    return key.getStartMark().getLine() + 1;
  }

  void error(String found, String remedy) {
    findings.error(place(), found, remedy);
  }

  void keyError(String found, String remedy) {
    findings.error(keyPlace(), found, remedy);
  }

  /** Reads a name of the book's own. */
  Optional<String> name() {
    return text().filter(name -> Names.check(name, this::error));
  }

  void unknown(String kind, String name, Collection<String> known) {
    error("the " + kind + " \"" + name + "\" is unknown", NearestSpelling.remedy(name, known));
  }

  Optional<String> text() {
    if (node instanceof ScalarNode scalar && !scalar.getValue().isBlank()) {
      return Optional.of(scalar.getValue().strip());
    }
    error(shown() + " is not a word or number", "write one value after the colon");
    return Optional.empty();
  }

  OptionalDouble number(NumberRange range) {
    return text().map(text -> range.read(place(), text, findings)).orElse(OptionalDouble.empty());
  }

  /** Reads a whole number; 0 where it is not one, with an error. */
  int whole(NumberRange range) {
    OptionalDouble number = number(range);
    if (number.isPresent() && number.getAsDouble() != Math.rint(number.getAsDouble())) {
      error(shown() + " is not a whole number", "write a whole number " + range);
    }
    return (int) number.orElse(0);
  }

  Optional<java.time.LocalDate> date() {
    return text().flatMap(text -> DateText.read(place(), text, findings));
  }

  <E extends Enum<E>> Optional<E> choice(E[] choices) {
    List<String> words =
        Arrays.stream(choices).map(choice -> choice.name().toLowerCase(Locale.ROOT)).toList();
    Optional<String> text = text();
    if (text.isPresent() && !words.contains(text.get())) {
      error(shown() + " is unknown", NearestSpelling.remedy(text.get(), words));
    }
    return text.map(words::indexOf).filter(i -> i >= 0).map(i -> choices[i]);
  }

  Optional<YamlMap> map() {
    if (node instanceof MappingNode mapping) {
      return Optional.of(new YamlMap(file, path, mapping, findings));
    }
    error(shown() + " is not a map", "write keys with values under it");
    return Optional.empty();
  }

  boolean isList() {
    return node instanceof SequenceNode;
  }

  /** Reads a list; empty where it is not one, with an error. */
  List<YamlValue> list() {
    if (!(node instanceof SequenceNode sequence)) {
      error(shown() + " is not a list", "write a list, as in [a, b]");
      return List.of();
    }
    List<YamlValue> items = new ArrayList<>();
    for (Node item : sequence.getValue()) {
      items.add(new YamlValue(file, path + "[" + items.size() + "]", item, item, findings));
    }
    return items;
  }

  /** Reads {@code count} numbers; nothing where there are not so many, with an error. */
  Optional<List<Double>> numbers(int count, NumberRange range) {
    int errorsBefore = findings.errors();
    List<YamlValue> items = list();
    if (findings.errors() == errorsBefore && items.size() != count) {
      error("the list has " + items.size() + " values", "write " + count + " numbers" + dots());
    }
    List<Double> numbers = items.stream().map(item -> item.number(range).orElse(0)).toList();
    return findings.errors() == errorsBefore ? Optional.of(numbers) : Optional.empty();
  }

  /** Reminds of the dot where values of a list touch as the parts of a decimal comma do. */
  private String dots() {
    List<Node> items = ((SequenceNode) node).getValue();
    for (int i = 1; i < items.size(); i++) {
      if (DecimalComma.parts(items.get(i - 1), items.get(i))) {
        return ", with a dot in each, as in " + DecimalComma.dotted(items.get(i - 1), items.get(i));
      }
    }
    return "";
  }

  private String shown() {
    if (node instanceof ScalarNode scalar) {
      return scalar.getValue().isBlank() ? "nothing" : "\"" + scalar.getValue() + "\"";
    }
    return node instanceof SequenceNode ? "a list" : "a map";
  }
}
