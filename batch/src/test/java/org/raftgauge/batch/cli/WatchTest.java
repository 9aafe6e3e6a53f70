// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.fixture.HandMadeWorkplace;
import org.raftgauge.batch.run.MeasureArrival;

/** A watch over a hand-made farm; waits for what it says, not for a time. */
class WatchTest {
  private static final int PATIENCE = 300;

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final HandMadeMeasurer measurer = new HandMadeMeasurer("s");
  private final AtomicInteger published = new AtomicInteger();

  @BeforeEach
  void makeFolders() throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    Files.createDirectories(folder.resolve("book"));
    photo("before.txt", "rafts=R1 area=9 at=2026-04-10T18:00:00+01:00");
  }

  @Test
  void eachArrivalIsToldKeptAndPublishedInAQuietMoment() throws Exception {
    Watch watch = watch();
    Thread thread = new Thread(() -> run(watch));
    thread.start();
    await("Watch    watching ");
    photo("a.txt", "rafts=R1 area=10 at=2026-04-11T18:00:00+01:00");
    await("GOOD  a.txt: R1: 3 sites\n");
    photo("b.txt", "status=skipped reason=taken_in_the_dark");
    await("TOO DARK  b.txt: taken in the dark\n");
    photo("c.txt", "boom=1");
    await("TAKE AGAIN  c.txt: the program failed on this photo");
    await("Results  out\n");
    watch.stop();
    thread.join(30_000);
    assertTrue(said().contains("Stopped  3 photos measured and kept in the book"), said());
    assertTrue(published.get() >= 1);
    assertTrue(!said().contains("before.txt"), "what was there is not told");
    int calls = measurer.calls();
    new MeasureArrival(folder.resolve("book"), measurer, "later")
        .measure(
            HandMadeWorkplace.find(folder.resolve("photos")).photos().stream()
                .filter(p -> p.facts().photo().equals("a.txt"))
                .findFirst()
                .orElseThrow());
    assertEquals(calls, measurer.calls(), "the history knows it");
  }

  private Watch watch() throws Exception {
    HandMadeWorkplace workplace = new HandMadeWorkplace(new HandMadeFarm("R1"), measurer);
    Path photos = folder.resolve("photos");
    Watch.Job job =
        new Watch.Job(
            photos,
            workplace,
            workplace.open(folder),
            new MeasureArrival(folder.resolve("book"), measurer, "w"),
            () -> {
              published.incrementAndGet();
              return Path.of("out");
            },
            1);
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(out, true, StandardCharsets.UTF_8),
            false);
    return new Watch(job, new WatchScreen(console));
  }

  private static void run(Watch watch) {
    try {
      watch.run();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private void await(String text) throws InterruptedException {
    for (int i = 0; i < PATIENCE && !said().contains(text); i++) {
      Thread.sleep(100);
    }
    assertTrue(said().contains(text), text + " is not in " + said());
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
  }

  private void photo(String name, String text) throws IOException {
    Files.writeString(folder.resolve("photos").resolve(name), text);
  }
}
