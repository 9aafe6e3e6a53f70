// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.everyday;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Opens a page in a Chromium without a screen and says what that took: a frame loads it, lays it
 * out, and writes the time into itself, which the browser prints; its processes are watched in
 * {@code /proc} (Linux) meanwhile.
 */
final class OpenPage {
  private static final long LOOK_MS = 30;
  private static final Pattern SAID =
      Pattern.compile("loaded=([0-9.]+) elements=(\\d+) heap=(\\d+)");

  private OpenPage() {}

  /**
   * What opening took.
   *
   * @param seconds from the start of loading until it is laid out
   * @param elements of the page
   * @param heapMb of its scripts
   * @param rendererMb largest share of memory (PSS) of the browser process that shows it
   */
  record Took(double seconds, int elements, double heapMb, double rendererMb) {}

  /** Opens a page. */
  static Took of(Path page, Path work) throws IOException {
    Path frame = work.resolve("frame.html");
    Files.writeString(frame, frame(page));
    Path out = work.resolve("frame-out.html");
    Process browser =
        new ProcessBuilder(
                "chromium",
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--allow-file-access-from-files",
                "--enable-precise-memory-info",
                "--user-data-dir=" + work.resolve("profile"),
                "--window-size=1366,768",
                "--dump-dom",
                frame.toUri().toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .redirectOutput(out.toFile())
            .start();
    double most = 0;
    while (browser.isAlive()) {
      most =
          Math.max(most, browser.descendants().mapToDouble(OpenPage::rendererMb).max().orElse(0));
      try {
        Thread.sleep(LOOK_MS);
      } catch (InterruptedException e) {
        browser.destroy();
        Thread.currentThread().interrupt();
      }
    }
    Matcher said = SAID.matcher(Files.readString(out));
    if (!said.find()) {
      throw new IOException("the browser did not say how long " + page + " took");
    }
    return new Took(
        Double.parseDouble(said.group(1)) / 1000,
        Integer.parseInt(said.group(2)),
        Double.parseDouble(said.group(3)) / 1e6,
        most);
  }

  private static String frame(Path page) {
    return String.format(
        Locale.ROOT,
        """
        <!DOCTYPE html><p id="said"></p><script>
        var from = performance.now();
        function done(frame) {
          var inside = frame.contentDocument;
          inside.body.getBoundingClientRect();
          document.getElementById("said").textContent = "loaded=" + (performance.now() - from)
            + " elements=" + inside.getElementsByTagName("*").length
            + " heap=" + performance.memory.usedJSHeapSize;
        }
        </script><iframe width="1366" height="768" onload="done(this)" src="%s"></iframe>
        """,
        page.toUri());
  }

  /** Returns the share of memory of a process that shows pages, MB; 0 for another one. */
  private static double rendererMb(ProcessHandle process) {
    try {
      Path folder = Path.of("/proc", Long.toString(process.pid()));
      String command = Files.readString(folder.resolve("cmdline"), StandardCharsets.ISO_8859_1);
      return command.contains("--type=renderer")
          ? Arrays.stream(Files.readString(folder.resolve("smaps_rollup")).split("\n", -1))
              .filter(line -> line.startsWith("Pss:"))
              .mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")) * 1024 / 1e6)
              .sum()
          : 0;
    } catch (IOException | UncheckedIOException ended) {
      return 0;
    }
  }
}
