// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.evening.Task.Action;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.problem.Problem;
import org.raftgauge.core.track.Judged;

/** Finds rafts whose photo is good and whose crop the book cannot tell. */
final class BookTasks {
  private final Tonight tonight;
  private final SeenItems seen;

  BookTasks(Tonight tonight, SeenItems seen) {
    this.tonight = tonight;
    this.seen = seen;
  }

  /** Says whether something is held for the book's sake: a new photo would not help. */
  static boolean isHeldByBook(Judged row) {
    return row.evidence().contains(RaftMeasure.NO_CROP);
  }

  List<Task> tasks() {
    Map<String, String> rafts = new TreeMap<>();
    for (Judged row : tonight.verdicts()) {
      if (row.scope() == Judged.Scope.SITE && isHeldByBook(row)) {
        rafts.computeIfAbsent(row.place().raft(), this::why);
      }
    }
    List<Task> tasks = new ArrayList<>();
    rafts.forEach(
        (raft, why) -> {
          String item = Item.ofRaft("book", raft, tonight.cycle(raft));
          if (!seen.hides(item)) {
            tasks.add(
                new Task(
                    Action.MEND_THE_BOOK,
                    1,
                    tonight.whole(raft),
                    why,
                    Optional.of(tonight.tomorrow()),
                    item));
          }
        });
    return tasks;
  }

  private String why(String raft) {
    TreeSet<String> problems = new TreeSet<>();
    for (Planting planting : tonight.book().plantingsOn(raft, tonight.evening())) {
      if (tonight.book().crop(planting).isEmpty()) {
        problem(planting).map(Problem::toString).ifPresent(problems::add);
      }
    }
    return "Its photo is good, but the crop of its planting cannot be used"
        + (problems.isEmpty() ? "" : ": " + String.join("; ", problems))
        + ". Mend that and run again.";
  }

  private Optional<Problem> problem(Planting planting) {
    CropBook book = tonight.book();
    return book.whyBroken(CropBook.PLANTED_CROP, planting.crop())
        .or(() -> book.whyBroken("crop", CropBook.cropKey(planting.crop(), planting.variety())))
        .or(() -> book.whyBroken("crop", planting.crop()));
  }
}
