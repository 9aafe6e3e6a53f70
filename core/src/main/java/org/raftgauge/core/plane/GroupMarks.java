// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.Layout;

/**
 * Says which markers and tags belong to one board, where several boards carry the same ids.
 *
 * <p>Each mark on its own, under each layout, foretells where the board's other marks should be;
 * those found there join, nearest first, and the pose is fitted again. The group that explains most
 * marks wins them; the rest are grouped again. A mark that the others contradict is dropped (leave
 * one out). The scheme is RANSAC's with every seed tried: Fischler and Bolles 1981, CACM 24:381.
 */
final class GroupMarks {
  /** A camera this far from the height in the station file is another camera. */
  private static final double HEIGHT_FRACTION = 0.12;

  /** Design: up to 5 degrees; allowed a little more. */
  private static final double MAX_TILT_DEG = 9;

  /** A mark is out of line from this distance on, mm and px: gluing and seeing are that good. */
  private static final double OUT_OF_LINE_MM = 3;

  private static final double OUT_OF_LINE_PX = 2;

  /** A mark whose side differs by more than this share was made in another size. */
  private static final double OTHER_SIZE = 0.08;

  private final KnownLayouts layouts;
  private final FitPose.Prior prior;

  /** Groups fitted before: every board grows anew from every mark that others left. */
  private final Map<Wanted, MarkGroup> fitted = new HashMap<>();

  /** Marks, in the order in which they were found to belong together, as one board's. */
  private record Wanted(Layout layout, List<Mark> marks) {}

  /** A group with what was dropped from it. */
  record Grouped(MarkGroup group, List<String> notes) {}

  GroupMarks(KnownLayouts layouts, FitPose.Prior prior) {
    this.layouts = layouts;
    this.prior = prior;
  }

  /**
   * Groups marks into boards.
   *
   * @param marks the marks seen; those grouped are taken out of the list
   * @return the boards, best supported first
   */
  List<Grouped> group(List<Mark> marks) {
    List<Grouped> groups = new ArrayList<>();
    while (true) {
      Optional<MarkGroup> best = best(marks);
      if (best.isEmpty()) {
        return groups;
      }
      Grouped settled = settle(best.get());
      marks.removeAll(best.get().marks());
      MarkGroup group = settled.group();
      List<Mark> stray = marks.stream().filter(group::covers).toList();
      marks.removeAll(stray);
      List<String> notes = new ArrayList<>(settled.notes());
      stray.forEach(m -> notes.add(m.named() + " lies where this board has none; left out"));
      groups.add(new Grouped(group, notes));
    }
  }

  private Optional<MarkGroup> best(List<Mark> marks) {
    List<MarkGroup> groups = new ArrayList<>();
    for (Mark seed : marks) {
      for (Layout layout : candidates(seed)) {
        if (seed.places(layout).isPresent()) {
          groups.add(grow(fitted(layout, List.of(seed)), marks));
        }
      }
    }
    return groups.stream()
        .filter(this::likely)
        .min(
            Comparator.comparingInt((MarkGroup g) -> -g.marks().size())
                .thenComparingDouble(g -> Math.round(20 * g.rmsPx()) / 20.0));
  }

  private List<Layout> candidates(Mark seed) {
    return seed.text().flatMap(layouts.ofRaft()).map(List::of).orElseGet(layouts::passing);
  }

  private MarkGroup grow(MarkGroup seed, List<Mark> marks) {
    MarkGroup group = seed;
    while (true) {
      MarkGroup present = group;
      Optional<Mark> next =
          marks.stream()
              .filter(m -> !present.has(m.id()) && fits(m, present.layout()))
              .filter(m -> present.missMm(m) < present.gateMm(m))
              .min(Comparator.comparingDouble(m -> present.missMm(m) / present.gateMm(m)));
      if (next.isEmpty()) {
        return group;
      }
      List<Mark> more = new ArrayList<>(group.marks());
      more.add(next.get());
      group = fitted(group.layout(), List.copyOf(more));
    }
  }

  private MarkGroup fitted(Layout layout, List<Mark> marks) {
    return fitted.computeIfAbsent(
        new Wanted(layout, marks), w -> MarkGroup.of(w.layout, w.marks, prior));
  }

  /** Says whether a board of a layout can carry a mark. */
  private boolean fits(Mark mark, Layout layout) {
    boolean other = mark.text().flatMap(layouts.ofRaft()).map(l -> !l.equals(layout)).orElse(false);
    return !other && mark.places(layout).isPresent();
  }

  /** Says whether a station's camera could see a board so. */
  boolean likely(MarkGroup group) {
    CameraPose pose = group.fit().pose();
    double off = Math.abs(pose.heightMm() / prior.heightMm() - 1);
    return off < HEIGHT_FRACTION && pose.tiltDeg() < MAX_TILT_DEG;
  }

  /** Drops the marks that the others contradict. */
  private Grouped settle(MarkGroup group) {
    List<String> notes = new ArrayList<>();
    MarkGroup present = group;
    while (present.marks().size() >= 3) {
      Optional<Mark> odd = odd(present);
      if (odd.isEmpty()) {
        break;
      }
      MarkGroup rest = present.without(odd.get(), prior);
      notes.add(why(odd.get(), rest));
      present = rest;
    }
    return new Grouped(present, notes);
  }

  /** Says what is wrong with a mark that the rest contradicts: its size, or its place. */
  private static String why(Mark mark, MarkGroup rest) {
    double seenMm = mark.sidePx() * scaleMmPerPx(mark, rest);
    double saidMm = mark.sideMm(rest.layout());
    return Math.abs(seenMm / saidMm - 1) > OTHER_SIZE
        ? String.format(
            Locale.ROOT,
            "%s is %.0f mm wide and was left out, for layout %s says side_mm: %.0f; mend that, or"
                + " print it anew",
            mark.named(),
            seenMm,
            rest.layout().name(),
            saidMm)
        : String.format(
            Locale.ROOT,
            "%s is %.0f mm out of line with the others and was left out",
            mark.named(),
            rest.missMm(mark));
  }

  /** Returns the mark without which the others agree best, where they contradict it. */
  private Optional<Mark> odd(MarkGroup group) {
    return group.marks().stream()
        .filter(m -> contradicted(m, group))
        .min(Comparator.comparingDouble(m -> group.without(m, prior).rmsPx()));
  }

  private boolean contradicted(Mark mark, MarkGroup group) {
    MarkGroup rest = group.without(mark, prior);
    double limitPx = Math.max(OUT_OF_LINE_PX, OUT_OF_LINE_MM / scaleMmPerPx(mark, group));
    // Two marks alone foretell a third less well than three do a fourth.
    double slack = rest.marks().size() == 2 ? 3 : 1;
    double miss = rest.missPx(mark);
    return miss > slack * limitPx && miss > 3 * rest.rmsPx();
  }

  private static double scaleMmPerPx(Mark mark, MarkGroup group) {
    return group.fit().pose().mmPerPxAt(group.fit().pose().toDeck(mark.centrePx()));
  }
}
