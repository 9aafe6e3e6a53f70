// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;

/** Saves fresh measures to the history, some photos in one transaction. */
final class KeepMeasures {
  private static final int BATCH = 16;

  private final History history;
  private final String run;
  private final ProgramVersion program = ProgramVersion.current();
  private final List<Measured> all = new ArrayList<>();
  private final List<Kept> waiting = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  KeepMeasures(History history, String run) {
    this.history = history;
    this.run = run;
  }

  /** Takes an outcome; of photos with the same bytes the first is kept. */
  void take(Measured measured) throws IOException {
    all.add(measured);
    boolean fresh = measured.source() == Measured.Source.FRESH;
    if (fresh && seen.add(measured.measure().sha256())) {
      waiting.add(Kept.fresh(measured.measure(), program.origin(measured.settings(), run)));
    }
    if (waiting.size() >= BATCH) {
      flush();
    }
  }

  /** Saves what waits. */
  void flush() throws IOException {
    history.save(waiting);
    waiting.clear();
  }

  /** Returns every outcome, in order. */
  List<Measured> all() {
    return List.copyOf(all);
  }
}
