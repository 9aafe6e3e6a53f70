// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.desk;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.raftgauge.batch.run.MarkSeen;
import org.raftgauge.core.problem.InputException;

/**
 * Serves the page of the latest published run to this machine and takes clicks on its worklist.
 *
 * <p>Only this machine can ask, only under its loopback names (so that no foreign site can be
 * pointed at it), and a click must carry the word that the page was given.
 */
public final class Desk implements AutoCloseable {
  /** A click is a few hundred bytes. */
  private static final int MOST_BYTES = 10_000;

  private static final Map<String, String> TYPES =
      Map.of(
          "html", "text/html; charset=utf-8",
          "csv", "text/csv; charset=utf-8",
          "json", "application/json",
          "txt", "text/plain; charset=utf-8",
          "svg", "image/svg+xml",
          "jpg", "image/jpeg",
          "png", "image/png",
          "pdf", "application/pdf");

  /** Shown until a run is published; it looks again by itself. */
  private static final String WAITING =
      """
      <!DOCTYPE html>
      <html lang="en"><head><meta charset="utf-8"><meta http-equiv="refresh" content="10">
      <meta name="viewport" content="width=device-width"><title>No results yet</title></head>
      <body style="font: 20px/1.5 sans-serif; max-width: 32em; margin: 3em auto; padding: 0 1em">
      <h1>No results yet</h1>
      <p>They come when no photo has come for a while (a minute, if nothing else was asked for). This
      page looks again every ten seconds.</p></body></html>
      """;

  private final HttpServer server;
  private final ExecutorService worker = Executors.newSingleThreadExecutor(Desk::quiet);
  private final Path book;
  private final Supplier<LocalDate> today;
  private final String word;
  private final AtomicReference<Path> folder = new AtomicReference<>();

  /** Rows that were marked since the results came. */
  private final Set<String> told = new LinkedHashSet<>();

  private Desk(HttpServer server, Path book, Supplier<LocalDate> today) {
    this.server = server;
    this.book = book;
    this.today = today;
    byte[] random = new byte[16];
    new SecureRandom().nextBytes(random);
    this.word = HexFormat.of().formatHex(random);
  }

  private static Thread quiet(Runnable task) {
    Thread thread = new Thread(task, "desk");
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Opens a desk.
   *
   * @param port to listen on, 1 to 65535, or 0 for a free one
   * @param book the crop book's folder, whose {@code seen.csv} clicks are written to
   * @param today says the farm's day
   * @return the open desk
   * @throws IOException if the port is taken
   */
  public static Desk open(int port, Path book, Supplier<LocalDate> today) throws IOException {
    InetSocketAddress here = new InetSocketAddress(InetAddress.getLoopbackAddress(), port);
    Desk desk = new Desk(HttpServer.create(here, 0), book, today);
    desk.server.createContext("/", desk::answer);
    desk.server.setExecutor(desk.worker);
    desk.server.start();
    return desk;
  }

  /** Returns the address to open in a browser. */
  public String address() {
    return "http://localhost:" + server.getAddress().getPort() + "/";
  }

  /**
   * Shows the page of a run from now on.
   *
   * @param run the folder of a published run
   */
  public void show(Path run) {
    folder.set(run.toAbsolutePath().normalize());
    synchronized (told) {
      told.clear();
    }
  }

  private void answer(HttpExchange exchange) throws IOException {
    try (exchange) {
      Answer answer = answerTo(exchange);
      exchange.getResponseHeaders().set("Content-Type", answer.type());
      exchange.getResponseHeaders().set("Cache-Control", "no-store");
      exchange.getResponseHeaders().set("X-Content-Type-Options", "nosniff");
      exchange.sendResponseHeaders(
          answer.status(), answer.body().length == 0 ? -1 : answer.body().length);
      exchange.getResponseBody().write(answer.body());
    }
  }

  private Answer answerTo(HttpExchange exchange) throws IOException {
    String host = Optional.ofNullable(exchange.getRequestHeaders().getFirst("Host")).orElse("");
    if (!host.matches("(localhost|127\\.0\\.0\\.1|\\[::1\\]):" + server.getAddress().getPort())) {
      return Answer.text(403, "ask for it as " + address());
    }
    String path = exchange.getRequestURI().getPath();
    if (path.equals("/seen") && exchange.getRequestMethod().equals("POST")) {
      boolean known = word.equals(exchange.getRequestHeaders().getFirst("X-Desk"));
      return known ? seen(exchange) : Answer.text(403, "load the page again");
    }
    return exchange.getRequestMethod().equals("GET")
        ? file(path)
        : Answer.text(405, "only pages and clicks");
  }

  private Answer file(String path) throws IOException {
    Path run = folder.get();
    if (run == null) {
      return path.equals("/")
          ? Answer.page(WAITING)
          : Answer.text(404, "There are no results yet.");
    }
    if (path.equals("/") || path.equals("/report.html")) {
      String page = Files.readString(run.resolve("report.html"));
      String marks = " data-desk=\"" + word + "\" data-told=\"" + told() + "\" ";
      return Answer.page(page.replaceFirst("<html ", "<html" + marks));
    }
    Path file = run.resolve(path.substring(1)).normalize();
    if (!file.startsWith(run) || !Files.isRegularFile(file)) {
      return Answer.text(404, "There is no such file in the results.");
    }
    String name = file.getFileName().toString();
    String ending = name.substring(name.lastIndexOf('.') + 1);
    return new Answer(
        200, TYPES.getOrDefault(ending, "application/octet-stream"), Files.readAllBytes(file));
  }

  /** Returns the rows marked since, each as in a form, separated by blanks. */
  private String told() {
    synchronized (told) {
      return told.stream()
          .map(item -> URLEncoder.encode(item, StandardCharsets.UTF_8).replace("+", "%20"))
          .collect(Collectors.joining(" "));
    }
  }

  private Answer seen(HttpExchange exchange) throws IOException {
    Map<String, String> fields =
        fields(
            new String(exchange.getRequestBody().readNBytes(MOST_BYTES), StandardCharsets.UTF_8));
    String item = fields.getOrDefault("item", "");
    String until = fields.getOrDefault("until", "");
    if (item.isBlank()) {
      return Answer.text(400, "the click names no row");
    }
    try {
      Optional<LocalDate> day =
          until.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(until));
      LocalDate now = today.get();
      if (day.filter(d -> !d.isAfter(now)).isPresent()) {
        return Answer.text(
            400, until + " is not after today, " + now + ": it hides nothing; give a later day");
      }
      String note = fields.getOrDefault("note", "");
      int line = MarkSeen.add(book, new MarkSeen.Say(List.of(item), day, "", note, now));
      synchronized (told) {
        told.add(item);
      }
      return Answer.text(200, "line " + line + " of seen.csv");
    } catch (DateTimeException e) {
      return Answer.text(400, "\"" + until + "\" is not a day; write it as 2026-04-16");
    } catch (InputException e) {
      return Answer.text(400, e.problems().get(0).toString());
    }
  }

  private static Map<String, String> fields(String form) {
    Map<String, String> fields = new HashMap<>();
    for (String pair : form.split("&", -1)) {
      String[] parts = pair.split("=", 2);
      if (parts.length == 2) {
        fields.put(parts[0], URLDecoder.decode(parts[1], StandardCharsets.UTF_8));
      }
    }
    return fields;
  }

  @Override
  public void close() {
    server.stop(0);
    worker.shutdownNow();
  }
}
