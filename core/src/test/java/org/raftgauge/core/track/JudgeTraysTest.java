// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A tray of 24 cells, sown on the first day, whose cells emerge one after the other. */
class JudgeTraysTest {
  private static final String RULES =
      "    emerged_by_das: 6\n    ready_to_transplant: {area_cm2: 2, share: 0.8}\n";

  @TempDir Path folder;

  /** Cell i emerges on day 2 + i / 6: six cells a day from day 2 to day 5; the last two never. */
  private static int emerges(int cell) {
    return cell >= 22 ? 99 : 2 + cell / 6;
  }

  private Farm tray(int last, double doubled) {
    Random random = new Random(12);
    double[] own = new double[Farm.SITES];
    for (int cell = 0; cell < own.length; cell++) {
      own[cell] = 0.1 * random.nextGaussian();
    }
    Farm farm = new Farm(folder, 1).crop(RULES).tray("TRAY", 0);
    for (int day = 1; day <= last; day++) {
      for (int cell = 0; cell < Farm.SITES; cell++) {
        double area = day < emerges(cell) ? 0 : 0.5 * Math.exp(0.2 * (day - 3) + own[cell]);
        farm.look(
            "TRAY",
            day,
            Farm.measure(Farm.site(cell), cell == 7 ? doubled * area : area, List.of()));
      }
    }
    return farm;
  }

  private Tray judge(Farm farm, int day) {
    return JudgeTrays.judge(farm.book(), farm.series(day), Farm.FIRST.plusDays(day)).get("TRAY");
  }

  @Test
  void shareEmergedIsCountedByDay() {
    Tray tray = judge(tray(6, 1), 6);
    // 0, 6, 12, 18 and 22 of 24 on days 1 to 5, by the way the tray is made.
    assertEquals(
        List.of(0, 6, 12, 18, 22, 22), tray.days().stream().map(Tray.Emerged::emerged).toList());
    assertEquals(22 / 24.0, tray.tonight().share(), 1e-12);
    assertEquals(Farm.FIRST, tray.sownOn());
  }

  @Test
  void halfHaveEmergedWhereTheShareCrossesAHalf() {
    Tray.HalfEmerged half = judge(tray(6, 1), 6).halfEmerged().orElseThrow();
    // 12 of 24 is just a half, on day 3 at 18:00: 3.75.
    assertEquals(3.75, half.das(), 1e-9);
    assertTrue(half.lo95() < 3.75 && half.lo95() > 2.75, half.toString());
    assertTrue(half.hi95().getAsDouble() > 3.75 && half.hi95().getAsDouble() < 4.75);
  }

  @Test
  void beforeHalfHaveEmergedThereIsNoSuchDay() {
    assertTrue(judge(tray(2, 1), 2).halfEmerged().isEmpty());
  }

  @Test
  void laterPhotosDoNotChangeWhatWasSaidOfAnEvening() {
    assertEquals(judge(tray(4, 1), 4), judge(tray(9, 1), 4));
  }

  @Test
  void cellsWhereNothingCameAreNamedOnceDue() {
    assertEquals(List.of(), judge(tray(5, 1), 5).none());
    assertEquals(List.of(Farm.site(22), Farm.site(23)), judge(tray(6, 1), 6).none());
  }

  @Test
  void cellOfTwiceTheUsualAreaLikelyHoldsTwoPlants() {
    assertEquals(List.of(), judge(tray(8, 1), 8).several());
    assertEquals(List.of(Farm.site(7)), judge(tray(8, 2), 8).several());
  }

  @Test
  void areasVaryByTheirOwnSpread() {
    // Areas share one size and a spread of 10 % in ln: the CV of that is 10 %, known to 1.5 %.
    double cv = judge(tray(8, 1), 8).coefficientOfVariation().orElseThrow();
    assertEquals(0.10, cv, 0.03);
  }

  @Test
  void trayIsReadyWhenEnoughCellsAreBigEnough() {
    // 0.5 exp(0.2 (d - 3)) passes 2 cm2 at d = 3 + ln 4 / 0.2 = 9.9.
    Tray early = judge(tray(9, 1), 9);
    assertFalse(early.ready());
    Tray late = judge(tray(12, 1), 12);
    assertTrue(late.ready());
    assertEquals(OptionalDouble.of(22 / 24.0), late.bigEnough());
    assertTrue(
        late.words()
            .endsWith("; nothing came in 2 cells; 92 % are big enough: ready to transplant"),
        late.words());
  }

  @Test
  void raftsRowSaysHowTheTrayStands() {
    String evidence = tray(6, 1).group(6, Judged.Scope.RAFT, "TRAY").evidence();
    assertTrue(
        evidence.contains("; 22 of 24 cells have emerged (92 %), half of them by day 3."),
        evidence);
  }

  @Test
  void raftOfTransplantsIsNoTray() {
    Farm farm = new Farm(folder, 1).raft("A", "P1", 0, 3, (site, dat) -> 2);
    assertTrue(JudgeTrays.judge(farm.book(), farm.series(2), Farm.FIRST.plusDays(2)).isEmpty());
  }
}
