// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.FoundBoard;

/**
 * Tells which raft a board is: its tag or slot, else the manifest, else the file's name; two that
 * differ hold it, but for a file's name that is no raft of the book, such as that of a copy.
 */
final class WhoseBoard {
  /** A board without a tag, less of it in the picture than this, is a neighbour that passes by. */
  private static final double NEIGHBOUR_FRACTION = 0.6;

  /**
   * A board must lie on the photo to this share to be measured: a site at its rim needs its rim.
   */
  private static final double WHOLE_FRACTION = 0.97;

  private final CropBook book;
  private final PhotoFacts facts;
  private final PhotoName name;
  private final PhotoStory.Scene scene;
  private final Optional<String> slot;

  WhoseBoard(CropBook book, PhotoFacts facts, PhotoName name, PhotoStory.Scene scene) {
    this.book = book;
    this.facts = facts;
    this.name = name;
    this.scene = scene;
    this.slot = facts.slot().or(() -> name.slot().filter(this::isHere));
  }

  /** Says whether the station has a slot; another in a file's name says nothing. */
  private boolean isHere(String slot) {
    return scene.station().slots().stream().anyMatch(s -> s.name().equals(slot));
  }

  /** Who a board is, or why it is held. */
  record Identity(Optional<String> raft, String held, String remedy) {}

  /**
   * Leaves out neighbours that the picture's edge cuts; a manifest or file name that tells a slot
   * leaves out the others.
   */
  List<FoundBoard> wanted(List<FoundBoard> boards, RgbImage image) {
    List<FoundBoard> wanted = new ArrayList<>();
    for (FoundBoard board : boards) {
      boolean otherSlot =
          slot.isPresent() && board.slot().isPresent() && !slot.equals(board.slot());
      boolean neighbour =
          board.slot().isEmpty()
              && board.tag().isEmpty()
              && board.inPhotoFraction(image) < NEIGHBOUR_FRACTION;
      if (!otherSlot && !neighbour) {
        wanted.add(held(board, image));
      }
    }
    return wanted;
  }

  private static FoundBoard held(FoundBoard board, RgbImage image) {
    double on = board.inPhotoFraction(image);
    if (on >= WHOLE_FRACTION || !board.held().isEmpty()) {
      return board;
    }
    return board.withHeld(
        String.format(Locale.ROOT, "only %.0f %% of the board is in the photo", 100 * on));
  }

  /** Names a board, one of {@code boards} in the photo. */
  Identity identity(FoundBoard board, int boards) {
    Optional<String> seen =
        board.slot().isPresent()
            ? book.raftInSlot(scene.station().name(), board.slot().get(), scene.evening())
            : board.tag();
    boolean alone = boards == 1 || slot.isPresent();
    Optional<String> told = alone ? facts.raft().or(() -> named(seen)) : Optional.empty();
    if (seen.isPresent() && told.isPresent() && !seen.equals(told)) {
      String by = board.slot().isPresent() ? "placements.csv" : "its tag";
      String other = facts.raft().isPresent() ? "the manifest" : "the file's name";
      return new Identity(
          Optional.empty(),
          by + " says raft " + seen.get() + ", " + other + " says " + told.get(),
          "mend the one that is wrong");
    }
    Optional<String> raft = seen.or(() -> told);
    return raft.filter(r -> board.slot().isEmpty() && otherLayout(r, board)).isPresent()
        ? otherBoard(raft.get(), board)
        : new Identity(raft, "", "");
  }

  /** The raft in the file's name; a name that the book never planted says nothing against a tag. */
  private Optional<String> named(Optional<String> seen) {
    return name.raft().filter(raft -> seen.isEmpty() || FactsOfName.rafts(book).contains(raft));
  }

  /** Says whether a raft that passes is planted in another layout than the board's. */
  private boolean otherLayout(String raft, FoundBoard board) {
    List<Planting> plantings = book.plantingsOn(raft, scene.evening());
    return !plantings.isEmpty()
        && plantings.stream().noneMatch(p -> p.layout().equals(board.layout().name()));
  }

  private static Identity otherBoard(String raft, FoundBoard board) {
    return new Identity(
        Optional.of(raft),
        "its marks fit layout "
            + board.layout().name()
            + ", which is not that of the planting on "
            + raft,
        "photograph it again with its tag in view, or mend the layout in plantings.csv");
  }

  /** Returns what was mended in placing a board, and whether its tag was not read. */
  static List<String> notes(FoundBoard board) {
    List<String> notes = new ArrayList<>(board.notes());
    if (board.slot().isEmpty() && board.layout().tag().isPresent() && board.tag().isEmpty()) {
      notes.add(RaftMeasure.TAG_UNREAD);
    }
    return notes;
  }
}
