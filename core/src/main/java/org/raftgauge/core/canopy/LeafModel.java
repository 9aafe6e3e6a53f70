// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Optional;

/** A built-in colour model: what leaf looks like in evened light. */
public enum LeafModel {
  /** Green leaf, from yellow-green to blue-green. */
  GREEN_LEAF("green-leaf", LeafRule::green),
  /** Red, purple and green leaf; provisional. */
  RED_LEAF("red-leaf", LeafRule::redOrGreen);

  private final String bookName;

  @SuppressWarnings("ImmutableEnumChecker") // compiled once and never written to
  private final ColourTable table;

  LeafModel(String bookName, LeafRule rule) {
    this.bookName = bookName;
    this.table = ColourTable.of(rule);
  }

  /** Returns its name in the book. */
  public String bookName() {
    return bookName;
  }

  /**
   * Finds a model by its name.
   *
   * @param name as the book gives it
   * @return the model, or nothing where none is built in under that name
   */
  public static Optional<LeafModel> named(String name) {
    for (LeafModel model : values()) {
      if (model.bookName.equals(name)) {
        return Optional.of(model);
      }
    }
    return Optional.empty();
  }

  ColourTable table() {
    return table;
  }
}
