// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.PrintStream;
import org.raftgauge.batch.run.Progress;

/** Speaks of nothing but what it waits for; shows where the program failed if asked. */
final class QuietProgress implements Progress {
  private final PrintStream err;
  private final boolean verbose;

  QuietProgress(PrintStream err, boolean verbose) {
    this.err = err;
    this.verbose = verbose;
  }

  @Override
  public void waitingFor(String holder) {
    err.println("The book is in use by " + holder + "; waiting for it to end");
  }

  @Override
  public void started(int photos) {}

  @Override
  public void done(String photo) {}

  @Override
  public void known(String photo) {}

  @Override
  public void readAgain(String photo, String why) {
    err.println(photo + ": cannot be read (" + why + "); trying again");
  }

  @Override
  public void failed(String photo, Throwable failure) {
    if (verbose) {
      synchronized (err) {
        err.println(photo + ":");
        failure.printStackTrace(err);
      }
    }
  }

  @Override
  public void finished() {}
}
