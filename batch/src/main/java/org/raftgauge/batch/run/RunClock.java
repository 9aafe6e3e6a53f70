// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

/** Times a run; its figures go to {@code run.json} only. */
final class RunClock {
  private final long startNanos = System.nanoTime();
  private long measuredNanos = startNanos;

  /** Notes that all photos are measured. */
  void measured() {
    measuredNanos = System.nanoTime();
  }

  /** Returns the time from start to the end of measuring, s. */
  double measuringS() {
    return seconds(measuredNanos - startNanos);
  }

  /** Returns the time since the start, s. */
  double elapsedS() {
    return seconds(System.nanoTime() - startNanos);
  }

  private static double seconds(long nanos) {
    return Math.round(nanos / 1e6) / 1e3;
  }
}
