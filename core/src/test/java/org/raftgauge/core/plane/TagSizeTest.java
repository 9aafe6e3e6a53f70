// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.TagPlace;

/** A tag printed in another size than the book says. */
class TagSizeTest {

  @Test
  void aTagOfAnotherSizeIsLeftOutAndBothSizesAreSaid() {
    Layout printed = PassingScenesTest.DECK;
    TagPlace tag = printed.tag().orElseThrow();
    // The book says a fifth more than was printed, at the same place.
    Layout book =
        new Layout(
            printed.name(),
            printed.from(),
            printed.board(),
            printed.grid(),
            printed.markers(),
            Optional.of(new TagPlace(tag.xMm(), tag.yMm(), 1.2 * tag.sideMm())),
            printed.orientationMark());
    Scene scene = Scene.of(PassingScenesTest.WIDTH, PassingScenesTest.HEIGHT, 6);
    scene.board(printed, PassingScenesTest.TRUTH).tagged("DR-1");

    FoundBoards found =
        FindBoards.passing(
            scene.draw(),
            TestLayouts.passing(
                PassingScenesTest.WIDTH, PassingScenesTest.HEIGHT, PassingScenesTest.LENS),
            new KnownLayouts(raft -> Optional.empty(), List.of(book), Optional.empty()));

    FoundBoard board = found.boards().get(0);
    assertEquals(1, board.notes().size(), board.notes().toString());
    String expected =
        String.format(
            "tag \"DR-1\" at \\(.*\\) px is %.0f mm wide and was left out, for layout deck-18 says"
                + " side_mm: %.0f; mend that, or print it anew",
            tag.sideMm(), 1.2 * tag.sideMm());
    assertTrue(board.notes().get(0).matches(expected), board.notes().get(0));
  }
}
