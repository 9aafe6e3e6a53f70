// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.soak;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.batch.cli.Workplace;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.run.Measurer;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * A workplace that notes, at every so many photos, the time, the resident memory of the process
 * (Linux: {@code VmRSS} of /proc/self/status) and what is alive in the Java heap after a
 * collection.
 */
final class SoakMeter implements Workplace {
  private final Workplace workplace;
  private final int every;
  private final StringBuilder notes = new StringBuilder("photos,seconds,resident_kb,live_kb\n");
  private final long begin = System.nanoTime();
  private int photos;

  SoakMeter(Workplace workplace, int every) {
    this.workplace = workplace;
    this.every = every;
  }

  /** Returns the notes as a table. */
  synchronized String notes() {
    return notes.toString();
  }

  /** Notes time and memory under a count of photos. */
  synchronized void note(int count) throws IOException {
    notes.append(
        String.format(
            Locale.ROOT,
            "%d,%.1f,%d,%d%n",
            count,
            (System.nanoTime() - begin) / 1e9,
            residentKb(),
            liveKb()));
  }

  private synchronized void count() {
    photos++;
    if (photos % every == 0) {
      try {
        note(photos);
      } catch (IOException e) {
        throw new IllegalStateException("no memory figure", e);
      }
    }
  }

  private static long liveKb() {
    System.gc();
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / 1024;
  }

  private static long residentKb() throws IOException {
    for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
      if (line.startsWith("VmRSS:")) {
        return Long.parseLong(line.replaceAll("\\D", ""));
      }
    }
    throw new IOException("/proc/self/status has no VmRSS");
  }

  @Override
  public OpenBook open(Path book) throws InputException {
    OpenBook open = workplace.open(book);
    return new OpenBook(
        open.farm(), counted(open.measurer()), open.problems(), open.page(), open.forecasts());
  }

  private Measurer counted(Measurer measurer) {
    return new Measurer() {
      @Override
      public PhotoResult measure(byte[] bytes, PhotoFacts facts) {
        PhotoResult result = measurer.measure(bytes, facts);
        count();
        return result;
      }

      @Override
      public String settingsHash(PhotoFacts facts) {
        return measurer.settingsHash(facts);
      }
    };
  }

  @Override
  public FoundPhotos photos(Path folder) throws InputException {
    return workplace.photos(folder);
  }

  @Override
  public List<Problem> check(Path book, Optional<Path> folder) {
    return workplace.check(book, folder);
  }
}
