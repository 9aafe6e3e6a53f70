// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeskTest {
  private static final String ITEM = "inspect-lagging/R 1/2026-04-06/B2";

  private static final LocalDate TODAY = LocalDate.of(2026, 4, 17);

  @TempDir private Path folder;
  private Path book;
  private Path run;
  private Desk desk;
  private final HttpClient client = HttpClient.newHttpClient();

  @BeforeEach
  void openTheDesk() throws IOException {
    book = Files.createDirectories(folder.resolve("book"));
    run = Files.createDirectories(folder.resolve("run/plots")).getParent();
    Files.writeString(run.resolve("report.html"), "<!DOCTYPE html>\n<html lang=\"en\">page</html>");
    Files.writeString(run.resolve("plots/a.svg"), "<svg/>");
    Files.writeString(folder.resolve("secret.txt"), "not of the run");
    desk = Desk.open(0, book, () -> TODAY);
  }

  @AfterEach
  void closeTheDesk() {
    desk.close();
  }

  @Test
  void showsTheLatestResultsAndNothingElseOfTheMachine() throws Exception {
    assertTrue(get("").body().contains("http-equiv=\"refresh\""), "waits for the first results");
    assertEquals(404, get("plots/a.svg").statusCode());
    desk.show(run);
    HttpResponse<String> page = get("");
    assertEquals(200, page.statusCode());
    assertTrue(page.body().contains("<html data-desk=\""), page.body());
    assertEquals("image/svg+xml", get("plots/a.svg").headers().firstValue("Content-Type").get());
    assertEquals(404, get("%2e%2e/secret.txt").statusCode());
    assertEquals(404, get("plots").statusCode());
  }

  @Test
  void aClickWritesARowOfSeenCsvAndThePageRemembersIt() throws Exception {
    desk.show(run);
    HttpResponse<String> done = post(word(), "item=" + form(ITEM) + "&note=done&until=");
    assertEquals("line 2 of seen.csv", done.body());
    post(word(), "item=weigh/R2/2026-04-06&note=put%20off&until=2026-04-20");
    assertEquals(
        List.of(
            "item,until,by,note,seen_on",
            ITEM + ",,,done,2026-04-17",
            "weigh/R2/2026-04-06,2026-04-20,,put off,2026-04-17"),
        Files.readAllLines(book.resolve("seen.csv")));
    assertTrue(get("").body().contains("data-told=\"" + form(ITEM) + " weigh"), get("").body());
    // With new results the list is new.
    desk.show(run);
    assertTrue(get("").body().contains("data-told=\"\""));
  }

  @Test
  void aClickWithoutThePagesWordOrWithANonsenseDayWritesNothing() throws Exception {
    desk.show(run);
    assertEquals(403, post("guessed", "item=a/b/c&note=done&until=").statusCode());
    assertEquals(400, post(word(), "note=done").statusCode());
    HttpResponse<String> wrong = post(word(), "item=a/b/c&until=tomorrow");
    assertEquals(400, wrong.statusCode());
    assertEquals("\"tomorrow\" is not a day; write it as 2026-04-16", wrong.body());
    HttpResponse<String> past = post(word(), "item=a/b/c&until=2026-04-17");
    assertEquals(400, past.statusCode());
    assertEquals(
        "2026-04-17 is not after today, 2026-04-17: it hides nothing; give a later day",
        past.body());
    assertFalse(Files.exists(book.resolve("seen.csv")));
  }

  @Test
  void aForeignNameThatPointsHereIsRefused() throws Exception {
    desk.show(run);
    // As a browser would ask whose page had its own name pointed at this machine.
    URI address = URI.create(desk.address());
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), address.getPort())) {
      socket
          .getOutputStream()
          .write(
              "GET / HTTP/1.1\r\nHost: farm.example\r\nConnection: close\r\n\r\n"
                  .getBytes(StandardCharsets.US_ASCII));
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertTrue(answer.startsWith("HTTP/1.1 403 "), answer);
    }
  }

  private String word() throws Exception {
    return get("").body().replaceAll("(?s).*data-desk=\"([0-9a-f]+)\".*", "$1");
  }

  private static String form(String text) {
    return text.replace("/", "%2F").replace(" ", "%20");
  }

  private HttpResponse<String> get(String path) throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create(desk.address() + path)).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private HttpResponse<String> post(String word, String form) throws Exception {
    return client.send(
        HttpRequest.newBuilder(URI.create(desk.address() + "seen"))
            .header("X-Desk", word)
            .POST(HttpRequest.BodyPublishers.ofString(form))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }
}
