// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Writes the page of a pretended farm and reads it as text. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportPageTest {
  private Path folder;
  private PretendRun farm;
  private String page;

  @BeforeAll
  void writeThePage(@TempDir Path run) throws IOException {
    folder = run;
    farm = PretendRun.of(folder.resolve("book"), 12, 4);
    Path picture = folder.resolve("boards/2026-04-16/R001.0.jpg");
    Files.createDirectories(picture.getParent());
    Files.writeString(picture, "a picture");
    Path heights = folder.resolve("heights/2026-04-16/R002.png");
    Files.createDirectories(heights.getParent());
    Files.writeString(heights, "a picture");
    farm.write(folder);
    page = Files.readString(folder.resolve("report.html"));
  }

  @Test
  void theRaftThatWasNotPhotographedIsTheFirstTask() {
    String first = between("<ol class=\"work\">", "</li>").replaceAll("<[^>]+>|\\s+", " ");
    assertTrue(first.matches(" *Photograph +raft +R013 +\\(pond P2, berth 3\\).*"), first);
  }

  @Test
  void raftsThatNobodyPhotographedAreOneLineWithEachRaftInIt(@TempDir Path run) throws IOException {
    List<Task> unseen =
        Stream.of("R001", "R002", "X9")
            .map(
                raft ->
                    new Task(
                        1,
                        "photograph at all",
                        new Task.Place("", "P1", "4", raft, ""),
                        "Expected, not seen. Last seen on 2026-04-10.",
                        "17 Apr 2026",
                        "photograph/" + raft + "/2026-04-16"))
            .toList();
    WritePage.write(
        ReportInput.of(farm.outcome(), farm.book()).withWorklist(List.of(new Work(unseen, ""))),
        run);
    String text = Files.readString(run.resolve("report.html"));
    String work = text.substring(text.indexOf("<ol class=\"work\">"));
    work = work.substring(0, work.indexOf("</ol>"));
    assertTrue(work.contains("3 rafts of pond P1 that were expected and not seen."), work);
    assertTrue(work.contains("<a href=\"#raft-R001\">R001</a>, berth 4, last seen on"), work);
    assertTrue(work.contains("data-item=\"photograph/X9/2026-04-16\">X9, berth 4"), work);
  }

  @Test
  void theSitesCountedAreThoseOfThisEveningsPhotosAndTheWorstPondIsNamed() {
    String glance = between("<ul class=\"glance\">", "</ul>");
    // Of 12 rafts each has one bare and one small site; of the first pond's ten rafts 20.
    assertTrue(glance.contains("24 sites to look at, on 12 rafts."), glance);
    assertFalse(glance.contains("evenings before"), glance);
    assertTrue(
        glance.matches("(?s).*Worst pond: P1 \\([a-z ]+, 20 sites to look at\\)\\..*"), glance);
    assertTrue(page.indexOf("#pond-P1") < page.indexOf("#pond-P2"), "the worst pond first");
  }

  @Test
  void aRaftHarvestedSinceItsPhotoIsNoLongerJudged(@TempDir Path run) throws IOException {
    PretendRun.harvested(run.resolve("book"), 3, 2, 1).write(run);
    String text = Files.readString(run.resolve("report.html"));
    String row = text.substring(text.indexOf("data-raft=\"raft-R002\""));
    row = row.substring(0, row.indexOf("</tr>"));
    assertTrue(row.contains("data-mark=\"ended\"") && row.contains("data-look=\"0\""), row);
  }

  @Test
  void aRaftOfWhichTheBookKnowsNothingIsNamedWithoutAGap(@TempDir Path run) throws IOException {
    PretendRun.unplanted(run.resolve("book"), 3, 2).write(run);
    String text = Files.readString(run.resolve("report.html"));
    String sheet = text.substring(text.indexOf("id=\"raft-R001\""));
    String gist = sheet.substring(sheet.indexOf("class=\"gist\">"), sheet.indexOf("</summary>"));
    assertTrue(gist.matches("(?s)class=\"gist\">\\p{L}.*"), gist);
    String glance = text.substring(text.indexOf("<ul class=\"glance\">"));
    glance = glance.substring(0, glance.indexOf("</ul>"));
    assertTrue(
        glance.contains("1 raft has no planting in the book and cannot be judged: R001."), glance);
    assertFalse(between("<ul class=\"glance\">", "</ul>").contains("no planting"), "all planted");
  }

  @Test
  void theBareSiteAndTheSmallOneAreTasksWithTheirReasons() {
    String work = between("<ol class=\"work\">", "</section>").replaceAll("<[^>]+>|\\s+", " ");
    // PretendRun leaves A1 of every raft bare and gives B2 40 % of the others' area.
    assertTrue(
        Pattern.compile("site A1 of raft +R\\d+ +\\(pond P\\d, berth \\d+\\): ")
            .matcher(work)
            .find(),
        work);
    assertTrue(
        Pattern.compile("site B2 of raft +R\\d+ +\\(pond P\\d, berth \\d+\\): It lags\\.")
            .matcher(work)
            .find(),
        work);
  }

  @Test
  void everyRaftHasARowAnAnchorAndAPlot() {
    for (int raft = 0; raft < 12; raft++) {
      String name = PretendRun.name(raft);
      assertTrue(page.contains("<a href=\"#raft-" + name + "\">" + name + "</a>"), name);
      assertTrue(page.contains("<details class=\"raft\" id=\"raft-" + name + "\""), name);
      assertTrue(Files.isRegularFile(folder.resolve("plots/growth-" + name + ".svg")), name);
    }
  }

  @Test
  void aRaftWhoseHeightsWereSeenShowsThemAndLinksThem() {
    String sheet = between("<details class=\"raft\" id=\"raft-R002\"", "<h5>Diary");
    assertTrue(
        sheet.contains("<a href=\"heights/2026-04-16/R002.png\"><img loading=\"lazy\""), sheet);
    assertTrue(sheet.contains("Heights that the second camera saw"), sheet);
    assertEquals(
        1, page.split("Heights that the second camera saw", -1).length - 1, "of one raft only");
  }

  @Test
  void everyLinkWithinThePageLeadsSomewhere() {
    Set<String> ids = all("\\sid=\"([^\"]+)\"");
    Set<String> links = new TreeSet<>(all("href=\"#([^\"]+)\""));
    // The raft that was never photographed has no sheet; its task is no link.
    links.removeAll(ids);
    assertEquals(Set.of(), links);
  }

  @Test
  void everyLinkedPictureIsInTheFolder() {
    Set<String> pictures = all("<img[^>]* src=\"([^\"]+)\"");
    assertTrue(pictures.contains("boards/2026-04-16/R001.0.jpg"), pictures.toString());
    assertEquals(
        Set.of(),
        pictures.stream()
            .filter(picture -> !Files.exists(folder.resolve(picture)))
            .collect(Collectors.toSet()));
  }

  @Test
  void everyPictureIsLazyAndHasAText() {
    List<String> pictures = new java.util.ArrayList<>();
    Matcher found = Pattern.compile("<img[^>]*>").matcher(page);
    while (found.find()) {
      pictures.add(found.group());
    }
    assertTrue(pictures.size() > 12, "pictures: " + pictures.size());
    for (String picture : pictures) {
      assertTrue(picture.contains("loading=\"lazy\""), picture);
      assertTrue(picture.matches("(?s).* alt=\"[^\"]{8,}\".*"), picture);
    }
  }

  @Test
  void nothingIsFetchedFromElsewhere() {
    String own = page.replace("http://www.w3.org/2000/svg", "");
    assertFalse(Pattern.compile("(?i)(https?:|//[a-z]|@import|url\\()").matcher(own).find());
  }

  @Test
  void theBoardHasAShapeAndALetterForEachMark() {
    String board = between("<svg class=\"board\"", "</svg>");
    assertTrue(board.contains("1 empty"), board);
    assertTrue(board.contains("1 lagging"), board);
    // 24 sites: one empty, one lagging, the other 22 on track.
    assertTrue(board.contains(">" + "O".repeat(22) + "</text>"), board);
    assertTrue(board.contains(">E</text>") && board.contains(">L</text>"), board);
  }

  @Test
  void originNamesVersionBookAndThePhotosHashes() {
    String origin = between("<section id=\"origin\"", "</section>");
    assertTrue(origin.contains("c0de") && origin.contains("b00c"), origin);
    // PretendRun numbers its hashes: evening 3, raft 11.
    assertTrue(origin.contains(String.format("%064x", 3011)), origin);
  }

  @Test
  void theHashOfARaftsPhotoLiesInAFold() {
    String sheet = between("<details class=\"raft\" id=\"raft-R001\"", "<details class=\"sites\"");
    String fold = sheet.substring(sheet.indexOf("<details class=\"origin-of\">"));
    assertTrue(fold.contains("SHA-256 of its bytes"), fold);
    assertFalse(sheet.replace(fold, "").contains("SHA-256"), "only there");
  }

  @Test
  void workStandsUnderTheDayOnWhichItIsDue() {
    // The evening is that of 2026-04-16.
    assertEquals(1, page.split("By Friday 17 April 2026, tomorrow", -1).length - 1);
    String work = between("<section id=\"worklist\"", "</section>").replaceAll("<[^>]+>", "");
    assertFalse(work.contains("2026-04-"), work);
  }

  @Test
  void nothingToDoIsSaidOnlyWhereNothingWasPutAside() {
    ReportModel none = model("Thursday", "");
    assertTrue(none.nothing().startsWith("Nothing to do: every expected raft"), none.nothing());
    ReportModel aside = model("Thursday", "1 row is hidden: 1 put off until 20 Apr 2026.");
    assertEquals("Nothing else to do.", aside.nothing());
    String html = WritePage.html(aside, List.of());
    assertTrue(html.contains("1 row is hidden: 1 put off until 20 Apr 2026."), "on the page");
    assertTrue(model("", "").nothing().startsWith("No evening could be judged"));
  }

  private static ReportModel model(String evening, String hidden) {
    return new ReportModel(
        evening,
        "cm\u00b2",
        List.of(),
        List.of(),
        hidden,
        List.of(),
        List.of(),
        Ahead.none(),
        List.of(),
        new ReportModel.Origin("", List.of(), List.of(), List.of()));
  }

  @Test
  void cautionsAreThere() {
    assertTrue(page.contains("not legal-for-trade weighing"));
    assertTrue(page.contains("not why: no diagnosis"));
    assertTrue(page.contains("product label and local rules"));
    assertTrue(page.contains("food-safety plan"));
  }

  @Test
  void theSameInputGivesTheSameBytes(@TempDir Path again) throws IOException {
    Files.createDirectories(again.resolve("boards/2026-04-16"));
    Files.writeString(again.resolve("boards/2026-04-16/R001.0.jpg"), "a picture");
    Files.createDirectories(again.resolve("heights/2026-04-16"));
    Files.writeString(again.resolve("heights/2026-04-16/R002.png"), "a picture");
    farm.write(again);
    assertEquals(page, Files.readString(again.resolve("report.html")));
    assertEquals(plots(folder), plots(again));
  }

  @Test
  void hostileTextStaysText(@TempDir Path hostile) throws IOException {
    Task.Place place = new Task.Place("", "<i>P", "\"'", "R1\" onclick=\"x()", "A1");
    Task task = new Task(1, "inspect", place, "<script>alert(1)</script>", "</li>", "");
    ForecastLine line =
        new ForecastLine("<b>raft</b>", "${1+1}", "1", "2", "3", "4", "5", "6", "<u>");
    ReportInput input =
        ReportInput.of(farm.outcome(), farm.book())
            .withWorklist(List.of(Work.of(task)))
            .withForecast(
                new Ahead(
                    List.of(line), List.of(), List.of(), List.of(), List.of("<i>P"), Map.of()));
    WritePage.write(input, hostile);
    String text = Files.readString(hostile.resolve("report.html"));
    assertTrue(text.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), "escaped");
    assertFalse(text.contains("<script>alert"), "a script got in");
    assertFalse(text.contains("<i>P"), "a tag got in");
    assertFalse(text.contains("\" onclick="), "an attribute got in");
    assertTrue(text.contains("&lt;b&gt;raft&lt;/b&gt;") && text.contains("${1+1}"), "forecast");
  }

  @Test
  void anchorsAreSafeAndDifferentForDifferentRafts() {
    assertEquals("raft-KV-112", Texts.anchor("KV-112"));
    // '/' is U+002F, '_' U+005F.
    assertEquals("raft-a_2fb", Texts.anchor("a/b"));
    assertEquals("raft-a_5f2fb", Texts.anchor("a_2fb"));
  }

  @Test
  void withoutVerdictsNothingIsSaidOfARaftButItsSizes(@TempDir Path plain) throws IOException {
    WritePage.write(ReportInput.of(farm.outcome(), farm.book()), plain);
    String text = Files.readString(plain.resolve("report.html"));
    assertTrue(text.contains("not judged"));
    assertFalse(text.contains("data-mark=\"lagging\""));
    // A bare planted site can be told without a verdict: A1 of each raft.
    assertTrue(text.contains("12 sites to look at, on 12 rafts."), "glance");
  }

  private static List<String> plots(Path from) throws IOException {
    try (Stream<Path> files = Files.list(from.resolve("plots"))) {
      return files
          .sorted()
          .map(
              file -> {
                try {
                  return file.getFileName() + "\n" + Files.readString(file);
                } catch (IOException e) {
                  throw new java.io.UncheckedIOException(e);
                }
              })
          .toList();
    }
  }

  private String between(String from, String to) {
    int start = page.indexOf(from);
    assertTrue(start >= 0, "the page has no " + from);
    return page.substring(start + from.length(), page.indexOf(to, start));
  }

  private Set<String> all(String pattern) {
    Set<String> found = new TreeSet<>();
    Matcher matcher = Pattern.compile(pattern).matcher(page);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }
}
