// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.everyday;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Opens a page in a Chromium without a screen and says what that took: a frame, served on this
 * machine beside the page, loads it, lays it out and tells the time; the browser's processes are
 * watched in {@code /proc} (Linux) meanwhile.
 */
final class OpenPage {
  private static final long LOOK_MS = 30;
  private static final int LOOKS = 4000;
  private static final Pattern SAID =
      Pattern.compile("loaded=([0-9.]+)&elements=(\\d+)&heap=(\\d+)&pictures=(\\d+)");

  private static final String FRAME =
      """
      <!DOCTYPE html><title>frame</title><script>
      var from = performance.now();
      function done(frame) {
        var inside = frame.contentDocument;
        inside.body.getBoundingClientRect();
        var took = performance.now() - from;
        var loaded = Array.from(inside.images).filter(i => i.complete && i.naturalWidth > 0);
        fetch("/said?loaded=" + took + "&elements=" + inside.getElementsByTagName("*").length
          + "&heap=" + performance.memory.usedJSHeapSize + "&pictures=" + loaded.length);
      }
      </script><iframe width="1366" height="768" onload="done(this)" src="/report.html"></iframe>
      """;

  private OpenPage() {}

  /**
   * What opening took.
   *
   * @param seconds from the start of loading until it is laid out
   * @param elements of the page
   * @param heapMb of its scripts
   * @param pictures loaded by then
   * @param rendererMb largest share of memory (PSS) of the browser process that shows it
   */
  record Took(double seconds, int elements, double heapMb, int pictures, double rendererMb) {}

  /** Opens a page with a new profile in a work folder. */
  static Took of(Path page, Path work) throws IOException, InterruptedException {
    BlockingQueue<String> said = new LinkedBlockingQueue<>();
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/", exchange -> answer(exchange, page.getParent(), said));
    server.start();
    Process browser =
        new ProcessBuilder(
                "chromium",
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--enable-precise-memory-info",
                "--remote-debugging-port=0",
                "--user-data-dir=" + work.resolve("profile"),
                "--window-size=1400,800",
                "http://localhost:" + server.getAddress().getPort() + "/frame.html")
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      double most = 0;
      for (int look = 0; look < LOOKS && browser.isAlive(); look++) {
        String answer = said.poll(LOOK_MS, TimeUnit.MILLISECONDS);
        most =
            Math.max(most, browser.descendants().mapToDouble(OpenPage::rendererMb).max().orElse(0));
        if (answer != null) {
          return took(answer, most);
        }
      }
      throw new IOException("the browser did not say how long " + page + " took");
    } finally {
      browser.destroy();
      browser.waitFor(LOOKS * LOOK_MS, TimeUnit.MILLISECONDS);
      server.stop(0);
    }
  }

  private static Took took(String answer, double most) throws IOException {
    Matcher said = SAID.matcher(answer);
    if (!said.find()) {
      throw new IOException("the browser said \"" + answer + "\"");
    }
    return new Took(
        Double.parseDouble(said.group(1)) / 1000,
        Integer.parseInt(said.group(2)),
        Double.parseDouble(said.group(3)) / 1e6,
        Integer.parseInt(said.group(4)),
        most);
  }

  private static void answer(HttpExchange exchange, Path folder, BlockingQueue<String> said)
      throws IOException {
    try (exchange) {
      String path = exchange.getRequestURI().getPath();
      Path file = folder.resolve(path.substring(1)).normalize();
      byte[] body = FRAME.getBytes(StandardCharsets.UTF_8);
      if (path.equals("/said")) {
        said.add(exchange.getRequestURI().getQuery());
        body = new byte[0];
      } else if (!path.equals("/frame.html")) {
        boolean there = file.startsWith(folder) && Files.isRegularFile(file);
        body = there ? Files.readAllBytes(file) : new byte[0];
      }
      String type = path.endsWith(".svg") ? "image/svg+xml" : "text/html; charset=utf-8";
      exchange.getResponseHeaders().set("Content-Type", type);
      exchange.sendResponseHeaders(200, body.length == 0 ? -1 : body.length);
      exchange.getResponseBody().write(body);
    }
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
    } catch (IOException ended) {
      return 0;
    }
  }
}
