// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.soak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.raftgauge.proving.report.Section;

/** Runs a soak and words what it came to. */
public final class Soak {
  private static final int EVERY = 500;

  private Soak() {}

  /**
   * What is asked for.
   *
   * @param work a folder for photos and results
   * @param photos how many
   * @param seed of the drawings
   * @param heapMb fixed size of the Java heap, MB
   * @param overlays whether overlay pictures are made
   */
  public record Asked(Path work, int photos, long seed, int heapMb, boolean overlays) {}

  /**
   * Draws the photos, runs the program over them, and words the result. Where the folder holds the
   * notes of a soak that has ended, that one is worded again.
   *
   * @param asked what is asked for
   * @param stamp what is measured, such as the commit
   * @return the section "Soak"
   * @throws IOException if a file cannot be written or the run fails
   */
  public static Section section(Asked asked, String stamp) throws IOException {
    Path measured = asked.work().resolve("stamp.txt");
    if (!Files.exists(asked.work().resolve("soak.csv"))) {
      new SoakFarm(asked.work(), asked.seed()).write(asked.photos());
      run(asked);
      Files.writeString(measured, stamp);
    }
    List<Note> notes = new ArrayList<>();
    try (Stream<String> lines = Files.lines(asked.work().resolve("soak.csv"))) {
      lines.skip(1).map(Note::parse).forEach(notes::add);
    }
    long rows;
    try (Stream<String> lines = Files.lines(asked.work().resolve("run/photos.csv"))) {
      rows = lines.skip(1).filter(line -> line.contains(",used,")).count();
    }
    return new Section(
        "Soak", head(asked, Files.readString(measured), rows) + verdict(notes) + table(notes), "");
  }

  private static void run(Asked asked) throws IOException {
    List<String> call = new ArrayList<>();
    call.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    call.addAll(List.of("-Djava.awt.headless=true", "-XX:+UseParallelGC"));
    call.add("-XX:+AlwaysPreTouch");
    call.addAll(List.of("-Xms" + asked.heapMb() + "m", "-Xmx" + asked.heapMb() + "m"));
    call.addAll(List.of("-cp", System.getProperty("java.class.path"), SoakRun.class.getName()));
    call.addAll(List.of(asked.work().toString(), Integer.toString(EVERY), "--quiet"));
    if (!asked.overlays()) {
      call.add("--no-overlays");
    }
    Process process = new ProcessBuilder(call).inheritIO().start();
    try {
      if (process.waitFor() != 0) {
        throw new IOException("the run ended with exit code " + process.exitValue());
      }
    } catch (InterruptedException e) {
      process.destroy();
      Thread.currentThread().interrupt();
      throw new IOException("stopped", e);
    }
  }

  private static String head(Asked asked, String stamp, long used) {
    return String.format(
        Locale.ROOT,
        "Made by `batch/proving/prove soak --work WORK --photos %d --seed %d%s --docs`; %s, two cores"
            + " that other work shared. %d drawn photos of 120 x 72 px, distinct in bytes and in raft"
            + " and time (%d rafts, an evening each %d), one run, overlays %s, a fixed Java heap of %d"
            + " MB that is touched beforehand: what grows in the resident memory lies outside it, and"
            + " what the program keeps in it shows in what is alive after a collection. `photos.csv`"
            + " has %d photos used.%n%n",
        asked.photos(),
        asked.seed(),
        asked.overlays() ? " --overlays" : "",
        stamp,
        asked.photos(),
        SoakFarm.RAFTS,
        SoakFarm.RAFTS,
        asked.overlays() ? "made" : "left out",
        asked.heapMb(),
        used);
  }

  /** Says what the growth of the memory comes to, against the aim of 5 % after the first 500. */
  private static String verdict(List<Note> notes) {
    Note first = notes.get(0);
    Note last = notes.stream().filter(n -> n.photos() > 0).reduce(first, (a, b) -> b);
    double growth = last.residentKb() / (double) first.residentKb() - 1;
    return String.format(
        Locale.ROOT,
        "While it measured, resident memory grew by %.1f %% from photo %d to photo %d, the live heap"
            + " by %.1f kB a photo; the aim of 5 %% is %s.%n%n",
        100 * growth,
        first.photos(),
        last.photos(),
        (last.liveKb() - first.liveKb()) / (double) Math.max(1, last.photos() - first.photos()),
        growth <= 0.05 ? "met" : "missed");
  }

  private static String table(List<Note> notes) {
    Note first = notes.get(0);
    StringBuilder table =
        new StringBuilder(
            """
            | photos | resident, MB | against the first 500 | live heap, MB | ms a photo, last 500 |
            | --- | --- | --- | --- | --- |
            """);
    Note before = new Note(0, 0, 0, 0);
    for (Note note : notes) {
      boolean end = note.photos() == 0;
      table.append(
          String.format(
              Locale.ROOT,
              "| %s | %.0f | %+.1f %% | %.1f | %s |%n",
              end ? "published (" + Math.round(note.seconds()) + " s)" : note.photos(),
              note.residentKb() / 1024.0,
              100 * (note.residentKb() / (double) first.residentKb() - 1),
              note.liveKb() / 1024.0,
              end ? "" : Math.round(1000 * (note.seconds() - before.seconds()) / EVERY)));
      before = note;
    }
    return table.toString();
  }

  /** Time and memory at a count of photos; 0 photos is the end of the run. */
  private record Note(int photos, double seconds, long residentKb, long liveKb) {
    static Note parse(String line) {
      String[] cells = line.split(",", -1);
      return new Note(
          Integer.parseInt(cells[0]),
          Double.parseDouble(cells[1]),
          Long.parseLong(cells[2]),
          Long.parseLong(cells[3]));
    }
  }
}
