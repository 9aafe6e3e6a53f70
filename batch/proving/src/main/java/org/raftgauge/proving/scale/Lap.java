// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scale;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;

/**
 * How long something took.
 *
 * @param wallSeconds by the clock
 * @param cpuSeconds of all threads of the process, the collector's and the compiler's too
 */
record Lap(double wallSeconds, double cpuSeconds) {
  private static final double NANOS = 1e9;

  /** Something to time. */
  interface Work<T> {
    T done() throws IOException;
  }

  /**
   * A result with its time.
   *
   * @param result what came of it
   * @param lap how long it took
   * @param <T> what it is
   */
  record Timed<T>(T result, Lap lap) {}

  static <T> Timed<T> of(Work<T> work) throws IOException {
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long cpu = system.getProcessCpuTime();
    long wall = System.nanoTime();
    T result = work.done();
    return new Timed<>(
        result,
        new Lap((System.nanoTime() - wall) / NANOS, (system.getProcessCpuTime() - cpu) / NANOS));
  }
}
