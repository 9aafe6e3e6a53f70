// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.PrintStream;
import java.util.Locale;
import org.raftgauge.batch.run.Progress;

/** Speaks in plain lines, one each tenth of the photos: for logs and pipes. */
final class PlainProgress implements Progress {
  private final PrintStream err;
  private final Progress quiet;
  private long startNanos;
  private int photos;
  private int done;

  PlainProgress(PrintStream err, boolean verbose) {
    this.err = err;
    this.quiet = new QuietProgress(err, verbose);
  }

  @Override
  public void waitingFor(String holder) {
    quiet.waitingFor(holder);
  }

  @Override
  public void started(int count) {
    photos = count;
    startNanos = System.nanoTime();
    err.println("Measuring " + count + (count == 1 ? " photo" : " photos"));
  }

  @Override
  public void done(String photo) {
    done++;
    if (10L * done / photos > 10L * (done - 1) / photos) {
      double seconds = Math.max((System.nanoTime() - startNanos) / 1e9, 1e-3);
      double left = seconds / done * (photos - done);
      err.println(
          String.format(
              Locale.ROOT,
              "%d of %d photos, %.1f a second, about %.0f s left",
              done,
              photos,
              done / seconds,
              left));
    }
  }

  @Override
  public void failed(String photo, Throwable failure) {
    quiet.failed(photo, failure);
  }

  @Override
  public void finished() {}
}
