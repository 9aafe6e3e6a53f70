// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;

/**
 * Saves fresh measures to the history, some photos in one transaction, and keeps of each photo only
 * what the history cannot tell, so that memory stays flat over the photos of a season.
 */
final class KeepMeasures {
  private static final int BATCH = 16;

  private final History history;
  private final String run;
  private final ProgramVersion program = ProgramVersion.current();
  private final List<Outcome> all = new ArrayList<>();
  private final List<Kept> waiting = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  KeepMeasures(History history, String run) {
    this.history = history;
    this.run = run;
  }

  /** Takes an outcome; of photos with the same bytes the first is kept. */
  void take(Measured measured) throws IOException {
    boolean failed = measured.source() == Measured.Source.FAILED;
    boolean stored = !failed && seen.add(measured.measure().sha256());
    if (stored && measured.source() == Measured.Source.FRESH) {
      waiting.add(Kept.fresh(measured.measure(), program.origin(measured.settings(), run)));
    }
    all.add(stored ? new Stored(measured) : new Whole(measured));
    if (waiting.size() >= BATCH) {
      flush();
    }
  }

  /** Saves what waits. */
  void flush() throws IOException {
    history.save(waiting);
    waiting.clear();
  }

  /** Returns every outcome, in order; those saved as the history has them. */
  List<Measured> all() throws IOException {
    flush();
    List<Measured> whole = new ArrayList<>(all.size());
    for (Outcome outcome : all) {
      whole.add(outcome.from(history));
    }
    return List.copyOf(whole);
  }

  /** What is kept of an outcome while others are measured. */
  private interface Outcome {
    Measured from(History history) throws IOException;
  }

  /** An outcome that the history does not have. */
  private record Whole(Measured measured) implements Outcome {
    @Override
    public Measured from(History history) {
      return measured;
    }
  }

  /** An outcome whose measure the history has. */
  private record Stored(
      String sha256, String settings, Measured.Source source, boolean pictured, String note)
      implements Outcome {

    Stored(Measured measured) {
      this(
          measured.measure().sha256(),
          measured.settings(),
          measured.source(),
          measured.pictured(),
          measured.note());
    }

    @Override
    public Measured from(History history) throws IOException {
      Kept kept =
          history
              .find(sha256)
              .orElseThrow(() -> new IOException("the history has lost photo " + sha256));
      return new Measured(kept.measure(), settings, source, pictured, note);
    }
  }
}
