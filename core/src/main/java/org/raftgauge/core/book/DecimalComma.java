// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.ArrayList;
import java.util.List;
import org.yaml.snakeyaml.DumperOptions.FlowStyle;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * Finds numbers that were written with a comma where a comma parts values: {@code {side_mm: 36,5}}
 * is, to YAML, a number 36 and a key 5 without a value.
 */
final class DecimalComma {
  private DecimalComma() {}

  /** Returns a map's entries with such numbers put together again, as they were written. */
  static List<NodeTuple> mended(MappingNode map) {
    List<NodeTuple> entries = new ArrayList<>();
    for (NodeTuple entry : map.getValue()) {
      int last = entries.size() - 1;
      boolean split =
          last >= 0
              && map.getFlowStyle() == FlowStyle.FLOW
              && text(entry.getValueNode()).isEmpty()
              && parts(entries.get(last).getValueNode(), entry.getKeyNode());
      if (split) {
        entries.set(last, joined(entries.get(last), entry.getKeyNode()));
      } else {
        entries.add(entry);
      }
    }
    return entries;
  }

  private static NodeTuple joined(NodeTuple whole, Node decimals) {
    ScalarNode value = (ScalarNode) whole.getValueNode();
    return new NodeTuple(
        whole.getKeyNode(),
        new ScalarNode(
            value.getTag(),
            value.getValue() + "," + text(decimals),
            value.getStartMark(),
            decimals.getEndMark(),
            value.getScalarStyle()));
  }

  /** Says whether two values are whole numbers with nothing but a comma between them. */
  static boolean parts(Node whole, Node decimals) {
    return text(whole).matches("[+-]?\\d+")
        && text(decimals).matches("\\d+")
        && whole.getEndMark().getIndex() + 1 == decimals.getStartMark().getIndex();
  }

  /** Writes the number that two such values were meant to be. */
  static String dotted(Node whole, Node decimals) {
    return text(whole) + "." + text(decimals);
  }

  private static String text(Node node) {
    return node instanceof ScalarNode scalar ? scalar.getValue() : "?";
  }
}
