// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.desk.Desk;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * Opens the page of a pretended farm in a Chromium without a screen; skipped where there is none.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportBrowserTest {
  private Path folder;
  private Chromium browser;
  private String url;

  @BeforeAll
  void writeThePage(@TempDir Path run, @TempDir Path profile) throws Exception {
    folder = run;
    Optional<Path> program = Chromium.program();
    assumeTrue(program.isPresent(), "no Chromium on the PATH: the page is not tried in a browser");
    PretendRun farm = PretendRun.of(folder.resolve("book"), 24, 3);
    for (PhotoMeasure photo : farm.outcome().photos()) {
      String name = photo.photo().replace(".jpg", "");
      picture(folder.resolve("boards/" + name + ".0.jpg"));
      picture(folder.resolve("overlays/" + name + ".jpg"));
    }
    for (String file :
        List.of("sites.csv", "rafts.csv", "photos.csv", "run.json", "worklist-a4.pdf")) {
      Files.writeString(folder.resolve(file), "");
    }
    farm.write(folder);
    url = folder.resolve("report.html").toUri().toString();
    browser = Chromium.start(program.get(), profile);
  }

  @AfterAll
  void closeTheBrowser() throws Exception {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void openThePage() throws Exception {
    browser.open("about:blank");
    browser.size(1366, 768);
    browser.open(url);
  }

  @Test
  void opensWithoutAComplaintAndLoadsNoPictureBeforeARaftIsOpened() throws Exception {
    assertEquals("0", browser.evaluate("performance.getEntriesByType('resource').length"));
    browser.evaluate(
        "document.querySelectorAll('details').forEach(d => { d.open = true; }), scrollTo(0, 2000)");
    assertEquals(List.of(), browser.complaints());
  }

  @Test
  void theFilterShowsThePondAskedForAndHidesTheOtherSheets() throws Exception {
    browser.evaluate(
        "(() => { const f = document.getElementById('find'); f.value = 'P2';"
            + " f.dispatchEvent(new Event('input')); })()");
    // Rafts 11 to 20 float in pond P2.
    assertEquals("10 of 24 rafts", browser.evaluate("document.getElementById('shown').value"));
    assertEquals(
        "10", browser.evaluate("document.querySelectorAll('details.raft:not([hidden])').length"));
  }

  @Test
  void sortingByRaftTurnsTheOrderRound() throws Exception {
    String first = "document.querySelector('#raft-table tbody th').textContent";
    browser.evaluate("document.querySelector('#raft-table thead button').click()");
    assertEquals("R001", browser.evaluate(first));
    browser.evaluate("document.querySelector('#raft-table thead button').click()");
    assertEquals("R024", browser.evaluate(first));
    assertEquals(
        "descending",
        browser.evaluate("document.querySelector('#raft-table th').getAttribute('aria-sort')"));
  }

  @Test
  void aDeepLinkOpensItsRaftAndShowsIt() throws Exception {
    browser.open("about:blank");
    browser.open(url + "#raft-R017");
    assertEquals("true", browser.evaluate("document.getElementById('raft-R017').open"));
    assertEquals("1", browser.evaluate("document.querySelectorAll('details.raft[open]').length"));
    assertEquals(
        "true",
        browser.evaluate(
            "new Promise(done => { const look = left => {"
                + " const top = document.getElementById('raft-R017').getBoundingClientRect().top;"
                + " if (Math.abs(top) < 80 || left === 0) { done(Math.abs(top) < 80); }"
                + " else { setTimeout(look, 100, left - 1); } }; look(60); })"));
  }

  @Test
  void everyLinkLeadsToAPlaceOnThePageOrAFileOfTheRun() throws Exception {
    String links =
        browser.evaluate(
            "Array.from(document.querySelectorAll('a[href]')).map(a => a.getAttribute('href'))"
                + ".filter(h => !h.startsWith('#') || !document.getElementById(h.slice(1)))"
                + ".filter((h, i, all) => all.indexOf(h) === i).join(' ')");
    for (String link : links.split(" ", -1)) {
      assertTrue(Files.isRegularFile(folder.resolve(link)), link);
    }
  }

  @Test
  void tablesOfPondsAndRaftsAreNotCutOffOnAPhone() throws Exception {
    browser.size(360, 740);
    for (String table : List.of("#ponds table", "#raft-table")) {
      assertEquals(
          "true",
          browser.evaluate(
              "(b => b.scrollWidth <= b.clientWidth)(document.querySelector('"
                  + table
                  + "').parentElement)"),
          table);
    }
    assertEquals(
        "\"Pond\"",
        browser.evaluate(
            "getComputedStyle(document.querySelector('#raft-table td:nth-child(5)'), '::before')"
                + ".content"));
  }

  @Test
  void thePageIsNoWiderThanAPhone() throws Exception {
    browser.size(360, 740);
    browser.evaluate("document.querySelectorAll('details').forEach(d => { d.open = true; })");
    assertEquals("360", browser.evaluate("document.documentElement.scrollWidth"));
  }

  @Test
  void printsOnAFewPagesWithOnlyTheOpenedRaft() throws Exception {
    int shut = pages(browser.pdf());
    // 24 rafts in a table, some 50 tasks, photos and cautions: three to six A4 pages.
    assertTrue(shut >= 2 && shut <= 6, shut + " pages");
    browser.evaluate("document.getElementById('raft-R001').open = true");
    int opened = pages(browser.pdf());
    assertTrue(opened > shut - 1 && opened <= shut + 3, shut + " pages, then " + opened);
  }

  @Test
  void atTheDeskAClickMarksARowAndItStaysMarked() throws Exception {
    assertEquals("0", browser.evaluate("document.querySelectorAll('.clicks').length"));
    Path book = folder.resolve("book");
    try (Desk desk = Desk.open(0, book, () -> LocalDate.of(2026, 4, 17))) {
      desk.show(folder);
      browser.open(desk.address());
      String row = "document.querySelectorAll('.work li[data-item]')[1]";
      String item = browser.evaluate(row + ".dataset.item");
      browser.evaluate(row + ".querySelector('button').click()");
      String told =
          browser.evaluate(
              "new Promise(done => { const look = left => { const t = "
                  + row
                  + ".querySelector('output').textContent;"
                  + " if (t || left === 0) { done(t); } else { setTimeout(look, 50, left - 1); }"
                  + " }; look(100); })");
      assertTrue(told.startsWith("done; to undo, delete line 2 of seen.csv."), told);
      assertEquals(
          List.of("item,until,by,note,seen_on", item + ",,,done,2026-04-17"),
          Files.readAllLines(book.resolve("seen.csv")));
      browser.open("about:blank");
      browser.open(desk.address());
      assertEquals("true", browser.evaluate(row + ".classList.contains('told')"));
      assertEquals("", Axe.isThere() ? Axe.run(browser) : "");
      assertEquals(List.of(), browser.complaints());
    }
  }

  @Test
  void axeFindsNothing() throws Exception {
    assumeTrue(
        Axe.isThere(), "axe-core could not be fetched by npm: contrast and labels not checked");
    browser.evaluate(
        "document.querySelectorAll('#raft-R001, .pond, .sites').forEach(d => { d.open = true; })");
    assertEquals("", Axe.run(browser));
  }

  private static int pages(byte[] pdf) {
    Matcher page =
        Pattern.compile("/Type\\s*/Page[^s]").matcher(new String(pdf, StandardCharsets.ISO_8859_1));
    int pages = 0;
    while (page.find()) {
      pages++;
    }
    return pages;
  }

  private static void picture(Path file) throws IOException {
    Files.createDirectories(file.getParent());
    ImageIO.write(new BufferedImage(60, 90, BufferedImage.TYPE_INT_RGB), "jpg", file.toFile());
  }
}
