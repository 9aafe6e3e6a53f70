// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.proving.accuracy.ErrorBars.Bar;
import org.raftgauge.proving.accuracy.ErrorBars.LookBars;

final class ErrorBarsTest {
  private static final String HEADER =
      "photo,raft,site,projected_area_cm2,projected_area_se_cm2,visible_area_cm2\r\n";

  @TempDir private Path folder;

  private final List<TruthSite> truth = new ArrayList<>();

  private SiteKey site(double projected, double visible) {
    SiteKey key = new SiteKey("p.jpg", "R1", "A" + (truth.size() + 1));
    truth.add(new TruthSite(key, "sun", projected, visible));
    return key;
  }

  private List<LookBars> judge(String... rows) throws IOException {
    Path file = folder.resolve("sites.csv");
    Files.writeString(file, HEADER + String.join("\r\n", rows) + "\r\n");
    return ErrorBars.judge(truth, file);
  }

  @Test
  void openSitesAreJudgedOnProjectedAndOverlappedOnesOnVisibleArea() throws IOException {
    site(100, 100);
    site(100, 80);
    // z: (104 - 100) / 2 = 2, outside 1.96; (77 - 80) / 3 = -1, inside.
    LookBars sun = judge("x/p.jpg,R1,A1,104,2,50", "x/p.jpg,R1,A2,300,3,77").get(0);
    assertEquals(2, sun.sites());
    assertEquals(0.5, sun.bias(), 1e-12);
    assertEquals(Math.sqrt(2.5), sun.spread(), 1e-12);
    assertEquals(0.5, sun.coveredShare(), 1e-12);
  }

  @Test
  void emptyHeldAndAbsentSitesDoNotCount() throws IOException {
    site(0, 0);
    site(100, 100);
    site(100, 100);
    site(100, 0.5);
    assertTrue(judge("p.jpg,R1,A1,3,1,3", "p.jpg,R1,A2,,,", "p.jpg,R1,A4,1,1,1").isEmpty());
  }

  @Test
  void trueStandardErrorsHaveSpreadOneCover95AndRank() {
    Random random = new Random(4);
    List<Bar> bars = new ArrayList<>();
    for (int i = 0; i < 30_000; i++) {
      double se = i % 3 + 1;
      bars.add(new Bar(se * random.nextGaussian(), se));
    }
    LookBars all = ErrorBars.of("all", bars);
    // 30 000 normal draws: standard error of mean 0.006, of spread 0.004, of coverage 0.13 %.
    assertEquals(0, all.bias(), 0.025);
    assertEquals(1, all.spread(), 0.02);
    assertEquals(0.95, all.coveredShare(), 0.006);
    // Mean |error| of a normal is sqrt(2 / pi) se: 0.798 for the third with 1, 2.394 with 3.
    assertEquals(0.798, all.lowThirdCm2(), 0.03);
    assertEquals(2.394, all.highThirdCm2(), 0.09);
  }

  @Test
  void fewSitesHaveNoThirds() {
    List<Bar> bars = new ArrayList<>(java.util.Collections.nCopies(14, new Bar(1, 1)));
    assertEquals(0, ErrorBars.of("few", bars).lowThirdCm2());
    assertTrue(
        ErrorBars.markdown(List.of(ErrorBars.of("few", bars)))
            .endsWith("| few | 14 | +1.00 | 1.00 | 100.0 % | | |  |\n"));
    bars.add(new Bar(4, 2));
    // 15 sites: the smallest five err by 1, the largest third by 1, 1, 1, 1 and 4: 1.6.
    assertTrue(
        ErrorBars.markdown(List.of(ErrorBars.of("some", bars)))
            .endsWith("| 1.00 | 1.60 | 1.6 |\n"));
  }
}
