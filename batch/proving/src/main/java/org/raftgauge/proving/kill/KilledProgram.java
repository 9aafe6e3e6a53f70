// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.cli.Console;
import org.raftgauge.batch.cli.Raftgauge;
import org.raftgauge.batch.cli.Workplace;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.store.Step;
import org.raftgauge.batch.store.Steps;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * The program as a process of its own, to be killed. It says {@link #BEGIN}, then each step before
 * it is done, and stops for good before the one that it is told: {@code STEP:COUNT}.
 */
public final class KilledProgram {
  static final String BEGIN = "BEGIN";
  static final String AT = "AT ";
  static final String NOWHERE = "-";

  private KilledProgram() {}

  /**
   * Runs the program.
   *
   * @param args where to stop, then the program's own
   */
  public static void main(String[] args) {
    PrintStream told = System.out;
    Steps steps = new Stopping(told, args[0]);
    told.println(BEGIN);
    told.flush();
    Console console = new Console(System.err, System.err, false);
    System.exit(
        Raftgauge.run(Arrays.copyOfRange(args, 1, args.length), new Telling(steps), console));
  }

  /** Tells each step and stops before one. */
  private static final class Stopping implements Steps {
    private final PrintStream told;
    private final String where;
    private final Map<Step, Integer> counts = new EnumMap<>(Step.class);

    Stopping(PrintStream told, String where) {
      this.told = told;
      this.where = where;
    }

    @Override
    public synchronized void before(Step step) {
      int count = counts.merge(step, 1, Integer::sum);
      told.println(AT + step + ":" + count);
      told.flush();
      while (where.equals(step + ":" + count)) {
        LockSupport.park();
      }
    }
  }

  /** The program's own workplace, with steps. */
  private record Telling(Steps steps) implements Workplace {
    private static final Workplace REAL = new BookWorkplace();

    @Override
    public OpenBook open(Path book) throws InputException {
      return REAL.open(book);
    }

    @Override
    public FoundPhotos photos(Path photos) throws InputException {
      return REAL.photos(photos);
    }

    @Override
    public List<Problem> check(Path book, Optional<Path> photos) {
      return REAL.check(book, photos);
    }
  }
}
