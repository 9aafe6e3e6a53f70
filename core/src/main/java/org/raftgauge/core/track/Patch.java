// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Planting;

/** The plants of one cohort on one raft, evening by evening. */
final class Patch {
  private final String raft;
  private final String pond;
  private final String crop;
  private final Cohort cohort;
  private boolean faulty;
  private final List<PatchLevel> levels = new ArrayList<>();

  Patch(String raft, Planting planting, Cohort cohort) {
    this.raft = raft;
    this.pond = planting.pond();
    this.crop = planting.crop();
    this.cohort = cohort;
    cohort.patches().add(this);
  }

  String raft() {
    return raft;
  }

  String pond() {
    return pond;
  }

  Cohort cohort() {
    return cohort;
  }

  /** Returns the crop of its plants. */
  String crop() {
    return crop;
  }

  /** Returns the last level. */
  Optional<PatchLevel> last() {
    return levels.isEmpty() ? Optional.empty() : Optional.of(levels.get(levels.size() - 1));
  }

  /** Says whether its raft or pond has been found to lag: it is no yardstick for others. */
  boolean faulty() {
    return faulty;
  }

  void faulty(boolean found) {
    if (found != faulty) {
      faulty = found;
      cohort.changed();
    }
  }

  List<PatchLevel> levels() {
    return levels;
  }

  void add(PatchLevel level) {
    levels.add(level);
    cohort.changed();
  }

  /** Returns the last level that is not doubted. */
  Optional<PatchLevel> lastGood() {
    for (int i = levels.size() - 1; i >= 0; i--) {
      if (!levels.get(i).doubtful()) {
        return Optional.of(levels.get(i));
      }
    }
    return Optional.empty();
  }

  /** Returns the last level, if it is doubted. */
  Optional<PatchLevel> lastDoubted() {
    return last().filter(PatchLevel::doubtful);
  }

  /** Returns by how much a level departs from what the last good one and growth foretold. */
  Optional<Double> surprise(PatchLevel tonight) {
    return lastGood()
        .map(
            before ->
                tonight.lnArea()
                    - before.lnArea()
                    - cohort.rate() * (tonight.age() - before.age()));
  }
}
