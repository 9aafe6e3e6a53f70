// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.raftgauge.batch.store.Step;

/** Lets runs on one book meet. */
final class Meetings {
  private static final int ROUNDS = 4;

  private final Bench bench;

  Meetings(Bench bench) {
    this.bench = bench;
  }

  /** What meets. */
  private enum Kind {
    /** The second does not want to wait. */
    REFUSED("a second run that will not wait is told who holds the book, and since when"),
    /** The second waits, the first is killed. */
    WAITED("a second run waits; the first is killed at a commit; the second ends whole"),
    /** Three at once. */
    RACE("three runs begin at once"),
    /** The lock's file names a process that is gone. */
    STALE("the lock's file names a process that is gone");

    private final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  static int cases() {
    return ROUNDS * Kind.values().length;
  }

  CaseRow meet(int number) throws IOException, InterruptedException {
    Kind kind = Kind.values()[number % Kind.values().length];
    Place place = bench.trial();
    place.copyOf(bench.most());
    Outcome outcome =
        switch (kind) {
          case REFUSED -> refused(place);
          case WAITED -> waited(place);
          case RACE -> race(place);
          case STALE -> stale(place);
        };
    return new CaseRow(number, "LOCK", "most", kind.words, outcome);
  }

  private Outcome refused(Place place) throws IOException, InterruptedException {
    Child first = stopped(place, Step.SETTLE);
    Bench.Said second = Bench.plain(place, bench.photos(), "--wait", "0");
    String holder = "another run (process " + first.pid() + " on ";
    first.kill();
    boolean told =
        second.code() == 3
            && second.text().contains("is in use by " + holder)
            && second.text().contains(", since ");
    return told ? bench.mend(place) : Outcome.failed("it said: " + second.text());
  }

  private Outcome waited(Place place) throws IOException, InterruptedException {
    Child first = stopped(place, Step.MOVE_INTO_PLACE);
    CompletableFuture<Bench.Said> second =
        CompletableFuture.supplyAsync(() -> Bench.plain(place, bench.photos(), "--wait", "60"));
    Thread.sleep(500);
    boolean waits = !second.isDone();
    first.kill();
    Bench.Said said = second.join();
    return waits && said.code() == 0
        ? bench.compare(place)
        : Outcome.failed("it did not wait, or failed: " + said.text());
  }

  private Outcome race(Place place) throws IOException, InterruptedException {
    List<Child> all = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      all.add(Child.start(bench, place, KilledProgram.NOWHERE));
    }
    List<Integer> codes = new ArrayList<>();
    for (Child each : all) {
      codes.add(each.end());
    }
    return codes.equals(List.of(0, 0, 0))
        ? bench.compare(place)
        : Outcome.failed("three runs ended with " + codes);
  }

  private Outcome stale(Place place) throws IOException {
    Files.writeString(
        place.book().resolve("run.lock"),
        "process 999999999 on elsewhere, since 2026-01-01T00:00:00Z\n");
    return bench.mend(place);
  }

  private Child stopped(Place place, Step step) throws IOException, InterruptedException {
    Child child = Child.start(bench, place, step + ":1");
    if (!child.waitFor(KilledProgram.AT + step + ":1")) {
      throw new IOException("the first run ended before " + step);
    }
    return child;
  }
}
