// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.raftgauge.core.book.Layout;

/**
 * The layouts that boards in a photo may have.
 *
 * @param ofRaft the layout of a raft by its id, where the book knows the raft
 * @param passing layouts of rafts that pass the station, for a board whose raft is not known
 * @param told the layout of the raft that manifest or file name tell, for a photo of one board
 */
public record KnownLayouts(
    Function<String, Optional<Layout>> ofRaft, List<Layout> passing, Optional<Layout> told) {

  /** Copies the list. */
  public KnownLayouts {
    passing = List.copyOf(passing);
  }

  /** Returns the layouts that a board may have whose tag was not read: the one told, else all. */
  List<Layout> untagged() {
    return told.filter(passing::contains).map(List::of).orElse(passing);
  }

  /**
   * Names the layouts, other than one, of which a board cannot be told from it by what was seen:
   * their holes lie elsewhere, so that a site would be looked for at another's place.
   *
   * @param layout the layout taken
   * @param alike whether a board of another layout would look the same
   * @return why the board is held, or empty where nothing else would do, or the layout was told
   */
  String rivals(Layout layout, Predicate<Layout> alike) {
    if (told.equals(Optional.of(layout))) {
      return "";
    }
    List<String> rivals =
        passing.stream()
            .filter(l -> !l.grid().equals(layout.grid()) || !l.board().equals(layout.board()))
            .filter(alike)
            .map(Layout::name)
            .toList();
    return rivals.isEmpty()
        ? ""
        : "nothing tells whether its layout is "
            + layout.name()
            + " or "
            + String.join(" or ", rivals)
            + "; name the raft in the manifest or the file's name";
  }
}
