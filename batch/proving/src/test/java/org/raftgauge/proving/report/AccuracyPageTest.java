// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.proving.accuracy.LookScore;
import org.raftgauge.proving.accuracy.LookScore.Errors;
import org.raftgauge.proving.accuracy.LookScore.FalseArea;
import org.raftgauge.proving.accuracy.ScoreFiles.Method;

class AccuracyPageTest {
  private static final Errors NONE = new Errors(0, 0, 0, 0, 0, 0, 0);

  @TempDir private Path folder;

  @Test
  void whatStandsBetweenTheMarkersIsReplacedAndNothingElse() throws IOException {
    Path readme = folder.resolve("README.md");
    Files.writeString(readme, "a\n<!-- accuracy:begin -->\nold\n<!-- accuracy:end -->\nb\n");
    AccuracyPage.fill(readme, "new\n");
    AccuracyPage.fill(readme, "newer\n");
    assertEquals(
        "a\n<!-- accuracy:begin -->\nnewer\n<!-- accuracy:end -->\nb\n", Files.readString(readme));
  }

  @Test
  void aReadmeWithoutMarkersIsRefused() throws IOException {
    Path readme = Files.writeString(folder.resolve("README.md"), "nothing\n");
    IOException refusal = assertThrows(IOException.class, () -> AccuracyPage.fill(readme, "new"));
    assertTrue(refusal.getMessage().contains("has no <!-- accuracy:begin -->"));
  }

  @Test
  void aRowShowsTheProgramBesideThePlainScript() {
    Method ours = method(new Errors(40, 2, 0, 0.0125, 0.04, 0, 0), 0.5);
    Method plain = method(new Errors(40, 0, 0, 0.05, 2.5, 0, 0), 80);
    // 0.0125 is 1.25 %, shown with one decimal, half up.
    assertEquals(
        "| sun | 40 (2) | 1.3 % | 4.0 % | 5.0 % | 250.0 % | 3 | 0.5 | 80.0 |\n",
        SummaryRows.of(ours, plain));
  }

  @Test
  void aRowShowsBuiltInAndTaughtModelsSideBySide() {
    Method builtIn = method(new Errors(40, 2, 0, 0.0125, 0.04, 0, 0), 0.5);
    Method taught = method(new Errors(40, 0, 0, 0.05, 2.5, 0, 0), 80);
    assertTrue(
        SideBySide.table(builtIn.scores(), taught.scores())
            .endsWith(
                "\n| sun | 40 | 1.3 % (2) | 4.0 % | 5.0 % (0) | 250.0 % | 0 |  |  | 0.5 | 80.0 |\n"));
  }

  @Test
  void thePageStandsInTheOrderOfItsSections() {
    String page =
        AccuracyPage.page(
            "commit 1, seed 2",
            List.of(new Section("First", "one", ""), new Section("Second", "two", "")));
    assertTrue(page.contains("commit 1, seed 2."));
    assertTrue(page.endsWith("\n## First\n\none\n\n## Second\n\ntwo\n"), page);
  }

  @Test
  void oneSectionIsReplacedAndTheOthersStay() throws IOException {
    Path page = Files.writeString(folder.resolve("PAGE.md"), "# P\n\n## A\n\nx\n\n## B\n\ny\n");
    AccuracyPage.replace(page, new Section("A", "new\n\n", ""));
    assertEquals("# P\n\n## A\n\nnew\n\n## B\n\ny\n", Files.readString(page));
    AccuracyPage.replace(page, new Section("B", "last", ""));
    assertEquals("# P\n\n## A\n\nnew\n\n## B\n\nlast\n", Files.readString(page));
  }

  @Test
  void sectionThatIsNotThereYetIsAddedAtTheEnd() throws IOException {
    Path page = Files.writeString(folder.resolve("PAGE.md"), "# P\n\n## A and more\n\nx\n");
    AccuracyPage.replace(page, new Section("A", "new", ""));
    assertEquals("# P\n\n## A and more\n\nx\n\n## A\n\nnew\n", Files.readString(page));
  }

  private static Method method(Errors open, double falseCm2) {
    LookScore score = new LookScore("sun", open, NONE, new FalseArea(3, 0, 0, falseCm2, 0));
    return new Method("any", List.of(score));
  }
}
