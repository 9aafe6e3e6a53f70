// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.TaughtColour;

/**
 * A colour model: what leaf looks like in evened light. Two are built in, others are taught.
 * Compiled once and never written to.
 */
public final class LeafModel {
  /** Green leaf, from yellow-green to blue-green. */
  public static final LeafModel GREEN_LEAF =
      new LeafModel("green-leaf", ColourTable.of(LeafRule::green), Optional.empty());

  /** Red, purple and green leaf; provisional. */
  public static final LeafModel RED_LEAF =
      new LeafModel("red-leaf", ColourTable.of(LeafRule::redOrGreen), Optional.empty());

  private final String bookName;
  private final ColourTable table;
  private final Optional<GroundNetwork> ground;

  private LeafModel(String bookName, ColourTable table, Optional<GroundNetwork> ground) {
    this.bookName = bookName;
    this.table = table;
    this.ground = ground;
  }

  /** Returns its name in the book. */
  public String bookName() {
    return bookName;
  }

  /**
   * Finds a built-in model by its name.
   *
   * @param name as the book gives it
   * @return the model, or nothing where none is built in under that name
   */
  public static Optional<LeafModel> named(String name) {
    for (LeafModel model : List.of(GREEN_LEAF, RED_LEAF)) {
      if (model.bookName.equals(name)) {
        return Optional.of(model);
      }
    }
    return Optional.empty();
  }

  /**
   * Compiles a taught model; this takes some tens of milliseconds.
   *
   * @param model as its file says it
   * @return the model
   */
  public static LeafModel taught(TaughtColour model) {
    TaughtRule rule = new TaughtRule(model);
    return new LeafModel(
        model.name(), ColourTable.of(rule::score), model.ground().map(GroundNetwork::new));
  }

  /** Says whether it tells leaf from open ground, where no board is seen. */
  public boolean knowsOpenGround() {
    return this == GREEN_LEAF || ground.isPresent();
  }

  ColourTable table() {
    return table;
  }

  /** Returns how it looks at open ground, if it was taught to. */
  Optional<GroundNetwork> ground() {
    return ground;
  }
}
