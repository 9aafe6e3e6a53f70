// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** A run of the program in a process of its own. */
final class Child {
  private static final long MOST_S = 300;
  private static final String END = "END";

  private final Process process;
  private final BlockingQueue<String> lines = new LinkedBlockingQueue<>();
  private String last = "before any step";
  private boolean ended;

  private Child(Process process) {
    this.process = process;
    Thread reader = new Thread(this::read, "steps of the child");
    reader.setDaemon(true);
    reader.start();
  }

  /**
   * Starts it.
   *
   * @param bench holds the photos, and an archive of classes that makes the start quicker
   * @param place the book
   * @param stop where it stops for good, or {@link KilledProgram#NOWHERE}
   */
  static Child start(Bench bench, Place place, String stop) throws IOException {
    Path archive = archive(bench);
    List<String> call = new ArrayList<>();
    call.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    call.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Djava.awt.headless=true"));
    call.add("-Xlog:disable");
    if (archives()) {
      call.add(
          (Files.exists(archive) ? "-XX:SharedArchiveFile=" : "-XX:ArchiveClassesAtExit=")
              + archive);
    }
    call.addAll(List.of("-cp", System.getProperty("java.class.path")));
    call.addAll(List.of(KilledProgram.class.getName(), stop));
    call.addAll(place.call(bench.photos()));
    Path log = bench.work().resolve("child.log");
    return new Child(new ProcessBuilder(call).redirectError(log.toFile()).start());
  }

  /**
   * Says whether classes can be archived: from jars alone; a folder of classes fails at the end.
   */
  static boolean archives() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .noneMatch(path -> Files.isDirectory(Path.of(path)));
  }

  /** Returns the archive of classes of a bench. */
  static Path archive(Bench bench) {
    return bench.work().resolve("classes.jsa").toAbsolutePath();
  }

  private void read() {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        lines.add(line);
      }
    } catch (IOException killed) {
      // The pipe breaks with the process.
    }
    lines.add(END);
  }

  /** Waits until it says a line; false if it ends first. */
  boolean waitFor(String line) throws IOException, InterruptedException {
    while (true) {
      String said = lines.poll(MOST_S, TimeUnit.SECONDS);
      if (said == null) {
        kill();
        throw new IOException("the child did not come to " + line);
      }
      remember(said);
      if (said.equals(line)) {
        return true;
      }
      if (said.equals(END)) {
        return false;
      }
    }
  }

  /** Kills it: SIGKILL where there are signals. */
  void kill() throws InterruptedException {
    process.destroyForcibly();
    process.waitFor();
    waitForEnd();
  }

  /** Waits until it has ended by itself and returns its exit code. */
  int end() throws InterruptedException {
    process.waitFor();
    waitForEnd();
    return process.exitValue();
  }

  private void waitForEnd() throws InterruptedException {
    while (!ended) {
      String said = lines.poll(MOST_S, TimeUnit.SECONDS);
      remember(said == null ? END : said);
    }
  }

  private void remember(String said) {
    ended |= said.equals(END);
    if (said.startsWith(KilledProgram.AT)) {
      last = said.substring(KilledProgram.AT.length());
    }
  }

  boolean alive() {
    return process.isAlive();
  }

  long pid() {
    return process.pid();
  }

  /** Returns the last step that it came to. */
  String last() {
    return last;
  }
}
