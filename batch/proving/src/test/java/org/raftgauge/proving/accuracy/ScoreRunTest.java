// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ScoreRunTest {
  private final List<TruthSite> truth = new ArrayList<>();
  private final Map<SiteKey, Answer> answers = new HashMap<>();

  private SiteKey site(double projected, double visible) {
    SiteKey key = new SiteKey("p.jpg", "R1", "A" + (truth.size() + 1));
    truth.add(new TruthSite(key, "sun", projected, visible));
    return key;
  }

  private void answer(SiteKey key, double projected, double visible, boolean closed) {
    answers.put(key, new Answer(OptionalDouble.of(projected), OptionalDouble.of(visible), closed));
  }

  private LookScore score() {
    return ScoreRun.score(truth, answers).get(0);
  }

  @Test
  void openSitesAreScoredOnTheProjectedArea() {
    answer(site(100, 100), 102, 50, false);
    answer(site(50, 49.5), 48, 10, false);
    answer(site(10, 10), 10, 10, false);
    // errors +0.02, -0.04, 0: bias -0.02 / 3, median 0.02, 95th 0.02 + 0.9 * 0.02 = 0.038
    assertEquals(3, score().open().sites());
    assertEquals(-0.02 / 3, score().open().biasShare(), 1e-12);
    assertEquals(0.02, score().open().medianShare(), 1e-12);
    assertEquals(0.038, score().open().p95Share(), 1e-12);
    // 2, 2 and 0 cm2
    assertEquals(2, score().open().medianCm2(), 1e-12);
    assertEquals(2, score().open().p95Cm2(), 1e-12);
  }

  @Test
  void overlappedSitesAreScoredOnTheVisibleArea() {
    answer(site(100, 80), 300, 84, true);
    assertEquals(0, score().open().sites());
    // 84 / 80 - 1
    assertEquals(0.05, score().overlapped().biasShare(), 1e-12);
  }

  @Test
  void anOpenSiteThatTheRunFlagsClosedIsAMiss() {
    answer(site(100, 100), 100, 100, true);
    assertEquals(1, score().open().missed());
    // one of one missed: past the 3 % allowance, counted as 100 %
    assertEquals(1, score().open().medianShare(), 1e-12);
  }

  @Test
  void threeInAHundredMayBeMissedForFreeAndNoMore() {
    for (int i = 0; i < 100; i++) {
      SiteKey key = site(100, 100);
      if (i >= 8) {
        answer(key, 101, 101, false);
      }
    }
    assertEquals(8, score().open().missed());
    // 92 errors of 0.01 and 5 counted misses of 1: rank 0.95 * 96 = 91.2, 0.01 + 0.2 * 0.99
    assertEquals(0.208, score().open().p95Share(), 1e-9);
    assertEquals(0.01, score().open().medianShare(), 1e-9);
    assertEquals(1, score().open().p95Cm2(), 1e-9, "a miss has no error in cm2");
  }

  @Test
  void areaOnEmptySitesIsCounted() {
    answer(site(0, 0), 0, 0, false);
    answer(site(0, 0), 2.5, 2.5, false);
    answer(site(0, 0), 0.4, 0.4, false);
    site(0, 0);
    LookScore.FalseArea empty = score().empty();
    assertEquals(new LookScore.FalseArea(4, 1, 0.4, 2.5, 1), empty);
  }

  @Test
  void allLooksTogetherComeLast() {
    answer(site(100, 100), 100, 100, false);
    truth.add(new TruthSite(new SiteKey("q.jpg", "R2", "A1"), "dim", 10, 10));
    List<LookScore> scores = ScoreRun.score(truth, answers);
    assertEquals(List.of("sun", "dim", "all"), scores.stream().map(LookScore::look).toList());
    assertEquals(2, scores.get(2).open().sites());
  }

  @Test
  void filesOfEitherSpellingAreReadAndScored(@TempDir Path folder) throws IOException {
    Path truthFile = folder.resolve("truth.csv");
    Files.writeString(
        truthFile,
        "photo,raft,site,pla_cm2,visible_cm2,condition\r\nx/p.jpg,R1,A1,50.0,50.0,season\r\n");
    Path sites = folder.resolve("sites.csv");
    Files.writeString(
        sites,
        String.join(
            "\r\n",
            "photo,station,raft,site,projected_area_cm2,visible_area_cm2,closed",
            "p.jpg,bench,R1,A1,51.0,51.0,false"));
    List<LookScore> scores =
        ScoreRun.score(TruthSite.read(truthFile, "condition"), Answer.read(sites));
    // 51 / 50 - 1
    assertEquals(0.02, scores.get(0).open().medianShare(), 1e-12);
    ScoreFiles.write(folder, List.of(new ScoreFiles.Method("run", scores)));
    String table = Files.readString(folder.resolve("accuracy.md"));
    assertTrue(table.contains("| season | 1 (0) | +2.0 % | 2.0 % | 2.0 % |"), table);
    assertTrue(
        Files.readString(folder.resolve("accuracy.csv")).contains("run,season,1,0,0.02000,"));
  }

  @Test
  void aBlankAreaIsNoAnswer(@TempDir Path folder) throws IOException {
    Path sites = folder.resolve("sites.csv");
    Files.writeString(
        sites,
        "photo,raft,site,projected_area_cm2,visible_area_cm2,closed\r\np.jpg,R1,A1,,,false\r\n");
    assertEquals(Answer.NONE, Answer.read(sites).get(new SiteKey("p.jpg", "R1", "A1")));
  }
}
