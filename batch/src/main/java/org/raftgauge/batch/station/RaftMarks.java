// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.raftgauge.batch.print.Mark;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Names;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;

/** Which marks rafts need. */
public final class RaftMarks {

  private final List<Mark> tags = new ArrayList<>();
  private final List<Mark> markers = new ArrayList<>();
  private final List<String> without = new ArrayList<>();

  private RaftMarks() {}

  /** What a mark is. */
  public enum Kind {
    /** QR codes with the rafts' ids. */
    TAGS,
    /** Corner markers 0 to 3. */
    MARKERS
  }

  /**
   * Sizes of marks.
   *
   * @param tagMm side of a tag without its white rim, mm, above 0
   * @param markerMm side of a marker's black square, mm, above 0
   */
  public record Sides(double tagMm, double markerMm) {}

  /**
   * Which rafts of a book are wanted; an empty set means all.
   *
   * @param rafts raft ids
   * @param ponds ponds
   * @param layouts layouts
   */
  public record Wanted(Set<String> rafts, Set<String> ponds, Set<String> layouts) {

    boolean has(Planting p) {
      return (rafts.isEmpty() || rafts.contains(p.raft()))
          && (ponds.isEmpty() || ponds.contains(p.pond()))
          && (layouts.isEmpty() || layouts.contains(p.layout()));
    }
  }

  /**
   * Returns the marks of rafts, all of one size.
   *
   * @param rafts raft ids
   * @param sides sizes
   * @return the marks
   * @throws InputException if an id is no name
   */
  public static RaftMarks of(Set<String> rafts, Sides sides) throws InputException {
    RaftMarks marks = new RaftMarks();
    for (String raft : rafts) {
      checkId(raft);
      marks.tags.add(Mark.tag(raft, sides.tagMm()));
      marks.addMarkers(raft, sides.markerMm());
    }
    return marks;
  }

  /**
   * Returns the marks of the rafts of a book, by their newest layout.
   *
   * @param folder the book's folder
   * @param wanted which rafts
   * @return the marks
   * @throws InputException if a wanted raft is not in the book or an id is no name
   */
  public static RaftMarks ofBook(Path folder, Wanted wanted) throws InputException {
    BookReading reading = CropBook.read(folder);
    CropBook book = reading.book();
    TreeMap<String, Planting> newest = new TreeMap<>();
    for (Planting p : book.plantings()) {
      if (wanted.has(p)) {
        newest.merge(p.raft(), p, (a, b) -> b.startsOn().isBefore(a.startsOn()) ? a : b);
      }
    }
    known("--layout", wanted.layouts(), book.layouts().keySet());
    known("--pond", wanted.ponds(), of(book, Planting::pond));
    known("RAFT", wanted.rafts(), of(book, Planting::raft));
    for (String raft : wanted.rafts()) {
      if (!newest.containsKey(raft)) {
        throw new InputException(
            List.of(
                new Problem(
                    "RAFT " + raft,
                    "lies in another pond, or has another layout, than asked for",
                    "leave --pond and --layout out")));
      }
    }
    RaftMarks marks = new RaftMarks();
    for (Planting p : newest.values()) {
      checkId(p.raft());
      marks.add(p, book.layout(p.layout(), p.startsOn()));
    }
    return marks;
  }

  private static Set<String> of(CropBook book, Function<Planting, String> part) {
    return book.plantings().stream().map(part).collect(Collectors.toCollection(TreeSet::new));
  }

  private static void known(String place, Set<String> wanted, Set<String> known)
      throws InputException {
    for (String name : wanted) {
      if (!known.contains(name)) {
        throw new InputException(
            List.of(
                new Problem(
                    place + " " + name,
                    "is not in the book",
                    NearestSpelling.remedy(name, known))));
      }
    }
  }

  private void add(Planting planting, Optional<Layout> layout) {
    layout.flatMap(Layout::tag).ifPresent(t -> tags.add(Mark.tag(planting.raft(), t.sideMm())));
    layout.flatMap(Layout::markers).ifPresent(m -> addMarkers(planting.raft(), m.sideMm()));
    if (layout.isEmpty() || (layout.get().tag().isEmpty() && layout.get().markers().isEmpty())) {
      without.add(
          "Raft " + planting.raft() + ": layout " + planting.layout() + " has no marks to print");
    }
  }

  private void addMarkers(String raft, double sideMm) {
    for (int id = 0; id < 4; id++) {
      markers.add(Mark.corner(id, sideMm, raft));
    }
  }

  private static void checkId(String raft) throws InputException {
    Optional<Problem> wrong = Names.problem("RAFT", raft);
    if (wrong.isPresent()) {
      throw new InputException(List.of(wrong.get()));
    }
  }

  /**
   * Returns the marks of a kind, raft by raft.
   *
   * @param kind the kind
   * @return the marks
   */
  public List<Mark> marks(Kind kind) {
    return switch (kind) {
      case TAGS -> List.copyOf(tags);
      case MARKERS -> List.copyOf(markers);
    };
  }

  /** Returns a line for each raft whose layout has no marks. */
  public List<String> without() {
    return List.copyOf(without);
  }
}
