// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * One run of the whole program over a folder in a process of its own: start, warm-up, hashing,
 * history, second pass, reports and page are in it.
 *
 * @param wallSeconds from start to end
 * @param cpuSeconds of the process, user and system
 * @param peakMb most resident memory; 0 where the system does not tell
 */
record WholeRun(double wallSeconds, double cpuSeconds, double peakMb) {
  private static final int LOOK_MS = 20;

  /** The launcher has no code optimised for runs over so many photos. */
  private static final int FEW = 16;

  /**
   * How the program is called.
   *
   * @param options the launcher's own file of Java's options
   * @param photos it will measure
   * @param workers that measure
   * @param overlays whether pictures are painted
   */
  record Call(Path options, int photos, int workers, boolean overlays) {}

  /**
   * Runs it on a copy of the set's book.
   *
   * @param set the rendered set
   * @param work folder for copy and results, emptied first
   * @param call how
   */
  static WholeRun over(Path set, Path work, Call call) throws IOException, InterruptedException {
    Folders.copy(set.resolve("book"), Folders.emptied(work).resolve("book"));
    List<String> line =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "@" + call.options,
                call.photos > FEW ? "-XX:+TieredCompilation" : "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "org.raftgauge.batch.cli.Raftgauge",
                "run",
                set.resolve("photos").toString(),
                "--book",
                work.resolve("book").toString(),
                "--out",
                work.resolve("run").toString(),
                "--workers",
                "" + call.workers,
                "--quiet"));
    if (!call.overlays) {
      line.add("--no-overlays");
    }
    return watched(line, work.resolve("said.txt"));
  }

  private static WholeRun watched(List<String> line, Path said)
      throws IOException, InterruptedException {
    long start = System.nanoTime();
    ProcessBuilder run = new ProcessBuilder(line).redirectErrorStream(true);
    run.environment().put("MALLOC_ARENA_MAX", "2"); // as the launcher does
    Process process = run.redirectOutput(said.toFile()).start();
    double cpu = 0;
    double peak = 0;
    while (!process.waitFor(LOOK_MS, TimeUnit.MILLISECONDS)) {
      Duration so = process.info().totalCpuDuration().orElse(Duration.ZERO);
      cpu = Math.max(cpu, so.toNanos() / 1e9);
      peak = Math.max(peak, peakMb(process.pid()));
    }
    double wall = (System.nanoTime() - start) / 1e9;
    if (process.exitValue() != 0) {
      throw new IOException("the run failed:\n" + Files.readString(said));
    }
    return new WholeRun(wall, cpu, peak);
  }

  /** Reads the high-water mark that Linux keeps. */
  private static double peakMb(long pid) {
    try {
      for (String line : Files.readAllLines(Path.of("/proc/" + pid + "/status"))) {
        if (line.startsWith("VmHWM:")) {
          return Double.parseDouble(line.replaceAll("\\D", "")) / 1024;
        }
      }
    } catch (IOException e) {
      // It has just ended, or this is no Linux.
    }
    return 0;
  }
}
