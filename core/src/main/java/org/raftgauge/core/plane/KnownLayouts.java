// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.raftgauge.core.book.Layout;

/**
 * The layouts that boards in a photo may have.
 *
 * @param ofRaft the layout of a raft by its id, where the book knows the raft
 * @param passing layouts of rafts that pass the station, for a board whose raft is not known
 */
public record KnownLayouts(Function<String, Optional<Layout>> ofRaft, List<Layout> passing) {

  /** Copies the list. */
  public KnownLayouts {
    passing = List.copyOf(passing);
  }
}
