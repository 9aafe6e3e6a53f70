// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Random;
import org.raftgauge.batch.store.Step;

/** Kills a run and lets a plain run follow. */
final class Kills {
  /** Every so-manieth case starts without any history, so that all 60 photos are measured in it. */
  private static final int EMPTY_EACH = 20;

  /** Every so-manieth case stops before the next of the other steps. */
  private static final int STEP_EACH = 6;

  private static final List<Step> BETWEEN = List.of(Step.MOVE_EARLIER_ASIDE, Step.MOVE_INTO_PLACE);
  private static final List<String> OTHERS =
      List.of(
          Step.SAVE_MEASURES + ":1",
          Step.SYNC_FILE + ":1",
          Step.SYNC_FILE + ":9",
          Step.SYNC_FILE + ":20",
          Step.SYNC_FOLDER + ":1",
          Step.SYNC_FOLDER + ":2",
          Step.SETTLE + ":1",
          Step.SYNC_FOLDER + ":4",
          Step.REMOVE_EARLIER + ":1",
          Step.NOTE_PUBLISHED + ":1",
          Step.WRITE_BACKUP + ":1",
          Step.MOVE_BACKUP + ":1",
          Step.ENDED + ":1");

  private final Bench bench;
  private final long seed;
  private double runS;

  Kills(Bench bench, long seed) {
    this.bench = bench;
    this.seed = seed;
  }

  /** When a case is killed. */
  enum When {
    /** After the commit that settles what counts, before the results stand. */
    BETWEEN("between the database's commit and the folder's publication"),
    /** Before another step that changes the disk. */
    STEP("before each other commit, sync and rename"),
    /** At any moment. */
    ANY("at a random moment");

    private final String words;

    When(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }

    /** Two thirds of all are drawn at random or spread over steps, a third lies between. */
    static When of(int number) {
      return switch (number % STEP_EACH) {
        case 0, 3 -> BETWEEN;
        case 1 -> STEP;
        default -> ANY;
      };
    }
  }

  /** Does a case; the same number and seed draw the same kill. */
  CaseRow kill(int number) throws IOException, InterruptedException {
    When when = When.of(number);
    Random draw = new Random(seed * 1_000_003L + number);
    for (int again = 0; ; again++) {
      boolean empty = number % EMPTY_EACH == EMPTY_EACH - 1;
      Place place = bench.trial();
      place.copyOf(empty ? bench.empty() : bench.most());
      String hit = hit(place, when, number + again * STEP_EACH, draw);
      if (!hit.isEmpty()) {
        Outcome outcome = half(place) ? Outcome.failed("half results stood") : bench.mend(place);
        return new CaseRow(number, when.name(), empty ? "empty" : "most", hit, outcome);
      }
      if (again > 20) {
        throw new IOException("case " + number + " always ends before it is killed");
      }
    }
  }

  /** Kills; returns the last step before it, or nothing where the run had no such step or ended. */
  private String hit(Place place, When when, int number, Random draw)
      throws IOException, InterruptedException {
    return switch (when) {
      case BETWEEN -> atStep(place, step(place, number / 3 % 2));
      case STEP -> atStep(place, OTHERS.get(number / STEP_EACH % OTHERS.size()));
      case ANY -> atAnyMoment(place, draw.nextDouble());
    };
  }

  private static String step(Place place, int which) {
    boolean first = !Files.exists(place.out());
    return (first ? Step.MOVE_INTO_PLACE : BETWEEN.get(which)) + ":1";
  }

  private String atStep(Place place, String step) throws IOException, InterruptedException {
    Child child = Child.start(bench, place, step);
    boolean there = child.waitFor(KilledProgram.AT + step);
    child.kill();
    return there ? child.last() : "";
  }

  private String atAnyMoment(Place place, double share) throws IOException, InterruptedException {
    if (runS == 0) {
      runS = time();
    }
    Child child = Child.start(bench, place, KilledProgram.NOWHERE);
    child.waitFor(KilledProgram.BEGIN);
    long end = System.nanoTime() + (long) (share * runS * 1e9);
    while (child.alive() && System.nanoTime() < end) {
      Thread.sleep(1);
    }
    if (!child.alive()) {
      runS *= 0.9;
      return "";
    }
    child.kill();
    return child.last();
  }

  /** Times a whole run from its beginning. */
  private double time() throws IOException, InterruptedException {
    Place copy = new Place(bench.work().resolve("timed"));
    copy.copyOf(bench.most());
    Child child = Child.start(bench, copy, KilledProgram.NOWHERE);
    child.waitFor(KilledProgram.BEGIN);
    long start = System.nanoTime();
    child.waitFor(KilledProgram.AT + Step.ENDED + ":1");
    double seconds = (System.nanoTime() - start) / 1e9;
    child.end();
    copy.clear();
    return seconds;
  }

  /** Says whether half results stand: neither none, nor those of before, nor the new ones. */
  private static boolean half(Place place) throws IOException {
    return Files.exists(place.out()) && !RunState.whole(place.out());
  }
}
