// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Writer;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A Chromium without a screen, spoken to in its DevTools protocol (Chrome DevTools Protocol, tip of
 * tree, domains Target, Page, Runtime, Log and Emulation). Messages are small JSON texts, picked
 * apart by patterns.
 */
final class Chromium implements AutoCloseable, WebSocket.Listener {
  private static final Pattern LISTENING = Pattern.compile("DevTools listening on (ws://\\S+)");
  private static final int PATIENCE_S = 60;

  private final Process process;
  private final BlockingQueue<String> messages = new LinkedBlockingQueue<>();
  private final StringBuilder partial = new StringBuilder();
  private final List<String> complaints = new ArrayList<>();
  private WebSocket socket;
  private String session = "";
  private int last;

  private Chromium(Process process) {
    this.process = process;
  }

  /** Finds the program, where there is one. */
  static Optional<Path> program() {
    for (String folder : System.getenv("PATH").split(":", -1)) {
      for (String name : List.of("chromium", "chromium-browser", "google-chrome")) {
        Path program = Path.of(folder, name);
        if (Files.isExecutable(program)) {
          return Optional.of(program);
        }
      }
    }
    return Optional.empty();
  }

  /** Starts one with its own empty profile. */
  static Chromium start(Path program, Path profile) throws Exception {
    Process process =
        new ProcessBuilder(
                program.toString(),
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--hide-scrollbars",
                "--no-first-run",
                "--disable-background-networking",
                "--remote-debugging-port=0",
                "--user-data-dir=" + profile,
                "about:blank")
            .redirectErrorStream(true)
            .start();
    Chromium browser = new Chromium(process);
    browser.connect();
    return browser;
  }

  private void connect() throws Exception {
    BufferedReader said =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = said.readLine();
    Matcher found = LISTENING.matcher("");
    while (line != null && !found.reset(line).find()) {
      line = said.readLine();
    }
    if (line == null) {
      throw new IOException("the browser ended before it could be spoken to");
    }
    Thread drain = new Thread(() -> drain(said), "browser output");
    drain.setDaemon(true);
    drain.start();
    socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .buildAsync(URI.create(found.group(1)), this)
            .get(PATIENCE_S, TimeUnit.SECONDS);
    String target = text(call("Target.createTarget", "\"url\":\"about:blank\""), "targetId");
    session =
        text(
            call("Target.attachToTarget", "\"flatten\":true,\"targetId\":\"" + target + "\""),
            "sessionId");
    for (String domain : List.of("Page", "Runtime", "Log", "Network", "Performance")) {
      call(domain + ".enable", "");
    }
  }

  /** Reads on, so that the browser never waits for a reader. */
  private static void drain(BufferedReader said) {
    try {
      said.transferTo(Writer.nullWriter());
    } catch (IOException e) {
      // The browser was closed.
    }
  }

  /** Opens a page and waits until it is loaded. */
  void open(String url) throws Exception {
    complaints.clear();
    call("Page.navigate", "\"url\":\"" + url + "\"");
    for (int i = 0; i < 200 && !evaluate("document.readyState").equals("complete"); i++) {
      Thread.sleep(50);
    }
  }

  /** Sets the size of the window, CSS px. */
  void size(int width, int height) throws Exception {
    call(
        "Emulation.setDeviceMetricsOverride",
        "\"width\":"
            + width
            + ",\"height\":"
            + height
            + ",\"deviceScaleFactor\":1,\"mobile\":false");
  }

  /** Evaluates an expression whose value is made a text; waits for a promise. */
  String evaluate(String expression) throws Exception {
    String wrapped = "(async()=>String(await (" + expression + ")))()";
    String said =
        call(
            "Runtime.evaluate",
            "\"awaitPromise\":true,\"returnByValue\":true,\"expression\":" + quoted(wrapped));
    if (said.contains("exceptionDetails")) {
      throw new AssertionError(expression + ": " + said);
    }
    return text(said, "value");
  }

  /** Returns what the page wrote to the console as errors or warnings, or did not find. */
  List<String> complaints() {
    return List.copyOf(complaints);
  }

  /** Takes a picture of the window. */
  void picture(Path file) throws Exception {
    byte[] png =
        Base64.getDecoder()
            .decode(text(call("Page.captureScreenshot", "\"format\":\"png\""), "data"));
    Files.write(file, png);
  }

  /** Prints on A4. */
  byte[] pdf() throws Exception {
    String size = "\"paperWidth\":8.27,\"paperHeight\":11.69,\"preferCSSPageSize\":false";
    return Base64.getDecoder().decode(text(call("Page.printToPDF", size), "data"));
  }

  /** Calls a method of the protocol and returns the whole answer. */
  String call(String method, String parameters) throws Exception {
    int id = ++last;
    String to = session.isEmpty() ? "" : ",\"sessionId\":\"" + session + "\"";
    socket
        .sendText(
            "{\"id\":"
                + id
                + to
                + ",\"method\":\""
                + method
                + "\",\"params\":{"
                + parameters
                + "}}",
            true)
        .get(PATIENCE_S, TimeUnit.SECONDS);
    while (true) {
      String message = messages.poll(PATIENCE_S, TimeUnit.SECONDS);
      if (message == null) {
        throw new IOException("no answer to " + method);
      }
      if (message.startsWith("{\"id\":" + id + ",")) {
        return message;
      }
      complaint(message);
    }
  }

  private void complaint(String message) {
    boolean bad =
        message.contains("\"Runtime.exceptionThrown\"")
            || message.contains("\"Log.entryAdded\"")
            || message.contains("\"Network.loadingFailed\"")
            || (message.contains("\"Runtime.consoleAPICalled\"")
                && message.matches("(?s).*\"type\":\"(error|warning|assert)\".*"));
    if (bad) {
      complaints.add(message);
    }
  }

  /** Picks a text out of a message. */
  static String text(String message, String key) {
    Matcher found =
        Pattern.compile("\"" + key + "\":\"((?:[^\"\\\\]|\\\\.)*+)\"", Pattern.DOTALL)
            .matcher(message);
    if (!found.find()) {
      throw new AssertionError("no " + key + " in " + message);
    }
    return found.group(1).replace("\\n", "\n").replace("\\\"", "\"").replace("\\\\", "\\");
  }

  private static String quoted(String text) {
    return "\""
        + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n").replace("\t", " ")
        + "\"";
  }

  @Override
  public void onOpen(WebSocket opened) {
    opened.request(Long.MAX_VALUE);
  }

  @Override
  public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean whole) {
    partial.append(data);
    if (whole) {
      messages.add(partial.toString());
      partial.setLength(0);
    }
    return null;
  }

  @Override
  public void close() throws IOException {
    socket.abort();
    process.descendants().forEach(ProcessHandle::destroy);
    process.destroy();
    process.onExit().orTimeout(10, TimeUnit.SECONDS).join();
  }
}
