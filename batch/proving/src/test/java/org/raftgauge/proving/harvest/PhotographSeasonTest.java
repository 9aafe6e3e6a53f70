// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.proving.plant.Habit;

/** A season's rendered photos against the sizes at which their plants were grown. */
class PhotographSeasonTest {
  private static final long SEED = 3;

  @Test
  void photosAreTakenEverySecondDayBackFromTheLast() {
    assertEquals(List.of(27, 25, 23, 21, 19, 17, 15, 13, 11, 9, 7, 5), Season.photographedOn(27));
    assertEquals(4, Season.photographedOn(34).get(15));
  }

  @Test
  void aRaftIsMeasuredAsItWasGrown(@TempDir Path folder) throws IOException {
    List<Double> errors = errors(new SeasonBench(Habit.BUTTERHEAD, 260), 21, folder);
    // Plants are grown to within some percent of the size that is wanted (PlantOrder), and open
    // sites measured to 1.5 % in the median at this detail (ACCURACY.md).
    assertTrue(HarvestScore.quantile(errors, 0.5) < 0.05, errors.toString());
    assertTrue(HarvestScore.quantile(errors, 0.95) < 0.12, errors.toString());
  }

  /** Leaves that fill the holes of a whole raft were once taken for the plugs' own colour. */
  @Test
  void youngPlantsThatFillTheirHolesAreNoPlugs(@TempDir Path folder) throws IOException {
    for (int dat : new int[] {8, 10}) {
      List<Double> errors = errors(new SeasonBench(Habit.BUTTERHEAD, 180), dat, folder);
      assertTrue(HarvestScore.quantile(errors, 0.5) < 0.06, dat + ": " + errors);
      assertTrue(HarvestScore.quantile(errors, 0.95) < 0.15, dat + ": " + errors);
    }
  }

  /** Returns the errors of a raft's areas on a day, as shares of the true ones. */
  private static List<Double> errors(SeasonBench bench, int dat, Path folder) throws IOException {
    Season season = new Season(SeasonSetting.photographed(false), SEED);
    CropBook book = SeasonBook.of(season, bench.place(SEED), folder.resolve("book"));
    List<Plant> plants = season.now.stream().filter(p -> p.raft.equals("N-0")).toList();
    PhotographSeason.Shown shown = new PhotographSeason.Shown("N-0", plants, Season.TONIGHTS, dat);
    new PhotographSeason(bench, SEED).take(shown, folder);
    byte[] photo = Files.readAllBytes(folder.resolve(shown.file()));
    RaftMeasure raft =
        MeasurePhoto.measure(photo, PhotoFacts.of(shown.file()), book).measure().rafts().get(0);
    assertEquals("N-0", raft.raft().orElseThrow());
    List<Double> errors = new ArrayList<>();
    for (Plant plant : plants) {
      SiteMeasure site =
          raft.sites().stream().filter(s -> s.site().equals(plant.site)).findFirst().orElseThrow();
      double truth = Math.exp(plant.lnArea[dat]);
      errors.add(Math.abs(site.projectedAreaCm2().orElseThrow() / truth - 1));
    }
    return errors;
  }
}
