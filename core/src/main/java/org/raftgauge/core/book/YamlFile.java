// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.io.StringReader;
import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.table.PlainText;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.reader.ReaderException;

/** Reads a YAML file to its tree of nodes; nothing in it is ever built as an object. */
final class YamlFile {
  private static final int MOST_ALIASES = 50;
  private static final int DEEPEST = 20;

  private YamlFile() {}

  /** Reads a file whose top is a map; nothing where it is not one, with an error. */
  static Optional<YamlMap> read(Path file, String name, Findings findings) {
    return PlainText.read(file, name, findings).flatMap(text -> parse(text, name, findings));
  }

  static Optional<YamlMap> parse(String text, String name, Findings findings) {
    try {
      LoaderOptions options = new LoaderOptions();
      options.setMaxAliasesForCollections(MOST_ALIASES);
      options.setNestingDepthLimit(DEEPEST);
      Node top = new Yaml(new SafeConstructor(options)).compose(new StringReader(text));
      if (top instanceof MappingNode map) {
        return Optional.of(new YamlMap(name, "", map, findings));
      }
      String found = top == null ? "the file is empty" : "the file is not a map";
      findings.error(name, found, "write it as lines of key: value");
    } catch (MarkedYAMLException syntax) {
      Mark mark = syntax.getProblemMark();
      findings.error(
          name + ":" + (mark.getLine() + 1) + ":" + (mark.getColumn() + 1),
          "the YAML cannot be read (" + syntax.getProblem() + ")",
          "mend the indentation, quotes or brackets at or just before this place");
    } catch (YAMLException odd) {
      findings.error(
          name,
          "the YAML cannot be read (" + odd.getMessage().lines().findFirst().orElse("") + ")",
          odd instanceof ReaderException
              ? "write it as plain text, without special characters"
              : "write it short and flat, without aliases, as the crop book guide shows");
    }
    return Optional.empty();
  }
}
