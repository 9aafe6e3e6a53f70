// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Runs on a disk that fills up: a small file system in memory, so many KB larger than what is on it
 * already. Only where the campaign may mount one (Linux, as root).
 */
final class FullDisks {
  private static final int CASES = 30;
  private static final long ENOUGH_KB = 65_536;

  private final Bench bench;
  private final Path disk;

  FullDisks(Bench bench) {
    this.bench = bench;
    this.disk = bench.work().resolve("disk").toAbsolutePath();
  }

  static int cases() {
    return CASES;
  }

  /** Does a case: room from none to more than a run needs, in uneven steps. */
  CaseRow fill(int number) throws IOException, InterruptedException {
    Files.createDirectories(disk);
    if (!mounted("mount", "-t", "tmpfs", "-o", "size=" + ENOUGH_KB + "k", "none")) {
      return new CaseRow(
          number, "DISK", "most", "not run: no right to mount a disk", new Outcome(0, 0, 0, ""));
    }
    try {
      Place place = new Place(disk.resolve("trial"));
      Files.createDirectories(place.folder());
      place.copyOf(bench.most());
      long usedKb = used() / 1024;
      long roomKb = roomKb(number);
      size(usedKb + roomKb);
      Bench.Said said = Bench.plain(place, bench.photos());
      boolean half = Files.exists(place.out()) && !RunState.whole(place.out());
      size(ENOUGH_KB);
      Outcome outcome = half ? Outcome.failed("half results stood") : bench.mend(place);
      if (said.code() != 0 && !speaksOfSpace(said.text())) {
        outcome = Outcome.failed("it did not speak of space: " + said.text().strip());
      }
      String hit =
          roomKb + " KB free: " + (said.code() == 0 ? "ran" : "stopped; nothing published");
      return new CaseRow(number, "DISK", "most", hit, outcome);
    } finally {
      call("umount", disk.toString());
    }
  }

  private static long roomKb(int number) {
    return 4L * number * number / 3;
  }

  private static boolean speaksOfSpace(String text) {
    return text.contains("o space left") || text.contains("full") || text.contains("disk");
  }

  private long used() throws IOException {
    FileStore store = Files.getFileStore(disk);
    return store.getTotalSpace() - store.getUsableSpace();
  }

  private void size(long kb) throws IOException, InterruptedException {
    if (call("mount", "-o", "remount,size=" + kb + "k", disk.toString()) != 0) {
      throw new IOException("cannot change the size of " + disk);
    }
  }

  private boolean mounted(String... command) throws InterruptedException {
    String[] all = java.util.Arrays.copyOf(command, command.length + 1);
    all[command.length] = disk.toString();
    try {
      return call(all) == 0;
    } catch (IOException none) {
      return false;
    }
  }

  private static int call(String... command) throws IOException, InterruptedException {
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
  }
}
