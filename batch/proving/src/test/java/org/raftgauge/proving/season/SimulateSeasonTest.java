// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;

class SimulateSeasonTest {
  private static final SeasonPlan PLAN = SeasonPlan.usual(12, false);

  @TempDir private Path folder;

  @Test
  void sameSeedGivesTheSameBytesAndAnotherSeedOthers() throws IOException {
    for (String name : List.of("a", "b")) {
      SeasonFiles.write(folder.resolve(name), PLAN, SimulateSeason.grow(PLAN, 5));
    }
    for (String file : List.of("sites.csv", "truth.csv", "book/plantings.csv")) {
      assertArrayEquals(
          Files.readAllBytes(folder.resolve("a").resolve(file)),
          Files.readAllBytes(folder.resolve("b").resolve(file)),
          file);
    }
    assertNotEquals(SimulateSeason.grow(PLAN, 5), SimulateSeason.grow(PLAN, 6));
  }

  @Test
  void bookOfASeasonHasNoProblems() throws IOException {
    SeasonFiles.write(folder, PLAN, SimulateSeason.grow(PLAN, 5));
    BookReading reading = CropBook.read(folder.resolve("book"));
    assertEquals(List.of(), reading.problems());
    assertEquals(12, reading.book().plantings().size());
  }

  @Test
  void everySiteStandsOnEveryEvening() {
    List<SeasonSite> sites = SimulateSeason.grow(PLAN, 5);
    assertEquals(12 * 18 * 25, sites.size());
  }

  @Test
  void healthyPlantsSpreadAsPlanned() {
    List<Double> shares =
        SimulateSeason.grow(SeasonPlan.usual(120, false), 5).stream()
            .filter(s -> s.fate().kind() == Fate.Kind.HEALTHY && s.dat() < 1)
            .map(s -> Math.log(s.trueShare()))
            .toList();
    double mean = shares.stream().mapToDouble(d -> d).average().orElseThrow();
    double variance =
        shares.stream().mapToDouble(d -> (d - mean) * (d - mean)).average().orElseThrow();
    // Plants 17 %, rafts 4 %, ponds 2 %: sqrt(0.17^2 + 0.04^2 + 0.02^2) = 0.176.
    assertEquals(0.176, Math.sqrt(variance), 0.015);
  }

  @Test
  void stalledPlantsStopAndHealthyOnesGoOn() {
    Map<Boolean, List<SeasonSite>> late =
        SimulateSeason.grow(SeasonPlan.usual(60, false), 8).stream()
            .filter(s -> s.dat() > 24)
            .filter(
                s -> s.fate().kind() == Fate.Kind.STALLS || s.fate().kind() == Fate.Kind.HEALTHY)
            .filter(s -> s.fate().kind() == Fate.Kind.HEALTHY || s.fate().onsetDat() < 15)
            .collect(Collectors.partitioningBy(s -> s.fate().kind() == Fate.Kind.STALLS));
    assertFalse(late.get(true).isEmpty());
    assertTrue(late.get(true).stream().allMatch(s -> s.trueShare() < 0.85));
    double healthy =
        late.get(false).stream().mapToDouble(SeasonSite::trueShare).average().orElseThrow();
    assertEquals(1, healthy, 0.06);
  }

  @Test
  void failingCameraChangesWhatIsMeasuredAndNotWhatIsTrue() {
    List<SeasonSite> sound = SimulateSeason.grow(PLAN, 5);
    List<SeasonSite> failing = SimulateSeason.grow(PLAN.withCameraFault(), 5);
    for (int i = 0; i < sound.size(); i++) {
      SeasonSite s = sound.get(i);
      assertEquals(s.trueCm2(), failing.get(i).trueCm2(), 1e-9);
      boolean fails = s.station().equals("bench-b") && s.day() >= SeasonPlan.FAULT_DAY;
      if (fails && s.measuredCm2() > 5) {
        assertTrue(failing.get(i).measuredCm2() < 0.9 * s.measuredCm2(), s.toString());
      } else if (!fails) {
        assertEquals(s.measuredCm2(), failing.get(i).measuredCm2(), 1e-9);
      }
    }
  }
}
