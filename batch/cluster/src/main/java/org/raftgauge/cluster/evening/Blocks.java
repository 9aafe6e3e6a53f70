// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.evening;

import java.io.Serializable;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.raftgauge.batch.cli.Workplace;
import org.raftgauge.batch.forecast.ForecastOfEvening;
import org.raftgauge.batch.run.JudgeHistory;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.batch.store.RaftDays;
import org.raftgauge.cluster.first.BookFiles;

/**
 * Evenings that follow each other, judged by one task, and which photos each block needs: of the
 * plantings that stand, from the day on which the oldest began, and of past plantings that they are
 * held against.
 */
final class Blocks implements Serializable {
  private static final long serialVersionUID = 1;

  private final ArrayList<ArrayList<LocalDate>> evenings = new ArrayList<>();
  private final ArrayList<LocalDate> first = new ArrayList<>();
  private final ArrayList<LocalDate> last = new ArrayList<>();
  private final HashMap<String, ArrayList<Past>> past = new HashMap<>();
  private final HashSet<String> corrected = new HashSet<>();

  private record Past(int block, LocalDate first, LocalDate last) implements Serializable {}

  private Blocks() {}

  /**
   * Cuts evenings into blocks.
   *
   * @param evenings to be judged
   * @param opened the book
   * @param most evenings a block, 1 or more
   * @return the blocks, in order of time
   */
  static Blocks of(Collection<LocalDate> evenings, BookFiles.Opened opened, int most) {
    Blocks blocks = new Blocks();
    blocks.corrected.addAll(Corrections.of(opened.corrections(), Instant.MAX).photos());
    List<LocalDate> sorted = List.copyOf(new TreeSet<>(evenings));
    for (int from = 0; from < sorted.size(); from += most) {
      blocks.add(sorted.subList(from, Math.min(sorted.size(), from + most)), opened.book());
    }
    return blocks;
  }

  private void add(List<LocalDate> block, Workplace.OpenBook book) {
    int place = evenings.size();
    evenings.add(new ArrayList<>(block));
    LocalDate from = block.get(0);
    for (LocalDate evening : block) {
      JudgeHistory.Needs needs = JudgeHistory.needs(book.farm(), evening);
      LocalDate ahead = ForecastOfEvening.firstDay(book.farm().book(), evening).minusDays(1);
      from = earlier(from, earlier(needs.first(), ahead));
      for (RaftDays days : needs.past()) {
        past.computeIfAbsent(days.raft(), r -> new ArrayList<>())
            .add(new Past(place, days.first(), days.last()));
      }
    }
    first.add(from);
    last.add(block.get(block.size() - 1).plusDays(2));
  }

  private static LocalDate earlier(LocalDate a, LocalDate b) {
    return a.isBefore(b) ? a : b;
  }

  int count() {
    return evenings.size();
  }

  List<LocalDate> evenings(int block) {
    return List.copyOf(evenings.get(block));
  }

  /** Returns whether a photo's day or rafts are corrected: it is sent to every block. */
  boolean isCorrected(String sha256) {
    return corrected.contains(sha256);
  }

  /** Returns every block. */
  Collection<Integer> all() {
    return IntStream.range(0, count()).boxed().toList();
  }

  /** Returns the blocks that need a photo of some day that shows some rafts. */
  Collection<Integer> needing(LocalDate day, Collection<String> rafts) {
    TreeSet<Integer> blocks = new TreeSet<>();
    for (int block = 0; block < count(); block++) {
      if (!day.isBefore(first.get(block)) && !day.isAfter(last.get(block))) {
        blocks.add(block);
      }
    }
    for (String raft : rafts) {
      for (Past days : past.getOrDefault(raft, new ArrayList<>())) {
        if (!day.isBefore(days.first()) && !day.isAfter(days.last())) {
          blocks.add(days.block());
        }
      }
    }
    return blocks;
  }
}
