// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.PrintStream;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.raftgauge.batch.run.Progress;

/** Draws a bar with photos done, rate and time left: for a person at a terminal. */
final class BarProgress implements Progress {
  private static final int UPDATE_MS = 250;

  private final PrintStream err;
  private final Progress quiet;
  private ProgressBar bar;
  private int known;

  BarProgress(PrintStream err, boolean verbose) {
    this.err = err;
    this.quiet = new QuietProgress(err, verbose);
  }

  @Override
  public void waitingFor(String holder) {
    quiet.waitingFor(holder);
  }

  @Override
  public void started(int photos) {
    bar =
        new ProgressBarBuilder()
            .setTaskName("Photos")
            .setInitialMax(photos)
            .setStyle(ProgressBarStyle.ASCII)
            .setUpdateIntervalMillis(UPDATE_MS)
            .setConsumer(new ConsoleProgressBarConsumer(err, TerminalSize.columns() - 1))
            .showSpeed()
            .build();
  }

  @Override
  public void done(String photo) {
    bar.step();
  }

  @Override
  public void known(String photo) {
    known++;
    bar.setExtraMessage(known + " measured before");
    bar.step();
  }

  @Override
  public void readAgain(String photo, String why) {
    quiet.readAgain(photo, why);
  }

  @Override
  public void failed(String photo, Throwable failure) {
    quiet.failed(photo, failure);
  }

  @Override
  public void finished() {
    bar.close();
  }
}
