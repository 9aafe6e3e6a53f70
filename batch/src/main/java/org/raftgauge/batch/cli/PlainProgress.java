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
  private int known;

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
    sayEachTenth();
  }

  @Override
  public void known(String photo) {
    known++;
    done(photo);
  }

  private void sayEachTenth() {
    if (10L * done / photos > 10L * (done - 1) / photos) {
      err.println(
          String.format(Locale.ROOT, "%d of %d photos", done, photos) + knownSoFar() + rate());
    }
  }

  private String knownSoFar() {
    if (known == 0) {
      return "";
    }
    return known == done
        ? ", measured before and not measured again"
        : String.format(Locale.ROOT, ", %d of them measured before", known);
  }

  /** Words the rate of those that take time: the photos not measured before. */
  private String rate() {
    int measured = done - known;
    if (measured == 0) {
      return "";
    }
    double seconds = Math.max((System.nanoTime() - startNanos) / 1e9, 1e-3);
    double left = seconds / measured * (photos - done);
    return String.format(
        Locale.ROOT, ", %.1f s a photo, about %.0f s left", seconds / measured, left);
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
  public void finished() {}
}
