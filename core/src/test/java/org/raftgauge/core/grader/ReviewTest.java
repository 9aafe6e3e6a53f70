// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ReviewTest {

  @Test
  void slippedDecimalIsNamedBothWays() {
    List<Weighed> plants = Plants.open(30, 0.1, 31);
    for (double factor : new double[] {10, 0.1}) {
      List<Suspect> found =
          ReviewWeighings.review(
              Plants.withWeight(plants, 7, plants.get(7).freshWeightG() * factor));
      assertEquals(1, found.size(), found.toString());
      assertEquals(Suspect.Kind.SLIPPED_DECIMAL, found.get(0).kind());
      assertEquals(plants.get(7).label(), found.get(0).row());
      assertTrue(found.get(0).why().contains("a slipped decimal point?"), found.get(0).why());
    }
  }

  @Test
  void swappedNeighboursAreNamedWithEachOther() {
    List<Weighed> plants = Plants.open(17, 0.05, 33); // all on one raft
    int small = 0;
    int large = 0;
    for (int i = 1; i < plants.size(); i++) {
      small = plants.get(i).freshWeightG() < plants.get(small).freshWeightG() ? i : small;
      large = plants.get(i).freshWeightG() > plants.get(large).freshWeightG() ? i : large;
    }
    List<Weighed> swapped =
        Plants.withWeight(
            Plants.withWeight(plants, small, plants.get(large).freshWeightG()),
            large,
            plants.get(small).freshWeightG());
    // Rafts change at line 18: keep those of the first raft only.
    List<Weighed> raft = swapped.stream().filter(w -> w.raft().equals("KV-1")).toList();
    assertTrue(raft.contains(swapped.get(small)) && raft.contains(swapped.get(large)));
    List<Suspect> found = ReviewWeighings.review(raft);

    List<Suspect> pair = found.stream().filter(s -> s.kind() == Suspect.Kind.SWAPPED).toList();
    assertEquals(2, pair.size(), found.toString());
    assertTrue(pair.get(0).why().endsWith("were the two sites mixed up?"), pair.get(0).why());
    assertEquals(
        java.util.Set.of(plants.get(small).label(), plants.get(large).label()),
        java.util.Set.of(pair.get(0).row(), pair.get(1).row()));
  }

  @Test
  void cleanPlantsRaiseNoSuspicion() {
    int named = 0;
    for (long seed = 0; seed < 20; seed++) {
      named += ReviewWeighings.review(Plants.open(40, 0.15, seed)).size();
    }
    // 1600 numbers; beyond 4 robust sd about 1 in 10 000 by chance, more where scale is estimated.
    assertTrue(named <= 4, named + " of 800 clean plants were named");
  }

  @Test
  void weightThatTwoRowsShareIsNamedOnlyWhereChanceWouldHardlyDoIt() {
    List<Weighed> plants = Plants.open(20, 0.1, 41);
    List<Weighed> copied = Plants.withWeight(plants, 9, 57.31);
    copied = Plants.withWeight(copied, 12, 57.31);
    List<Suspect> found = ReviewWeighings.review(copied);
    assertTrue(
        found.stream()
            .anyMatch(
                s ->
                    s.kind() == Suspect.Kind.SHARED_VALUE
                        && s.row().equals(plants.get(12).label())
                        && s.why()
                            .equals(
                                "57.31 is also that of " + plants.get(9).label() + ": copied?")),
        found.toString());
    // Whole grams repeat all the time.
    List<Weighed> whole = Plants.withWeight(Plants.withWeight(plants, 9, 57), 12, 57);
    assertTrue(
        ReviewWeighings.review(whole).stream()
            .noneMatch(s -> s.kind() == Suspect.Kind.SHARED_VALUE));
  }

  @Test
  void columnThatIsOffIsBlamedAndNotTheOthers() {
    List<ReviewTable.Row> rows = table(60, 5);
    Map<String, Double> odd = new LinkedHashMap<>(rows.get(20).numbers());
    odd.put("diameter_mm", odd.get("diameter_mm") / 2);
    rows.set(20, new ReviewTable.Row("row 20", "", odd));
    List<Suspect> found = ReviewTable.review(rows);
    assertEquals(1, found.size(), found.toString());
    assertEquals("row 20", found.get(0).row());
    assertEquals("diameter_mm", found.get(0).column());
    assertEquals(Suspect.Kind.OUT_OF_LINE, found.get(0).kind());
  }

  @Test
  void tableOfFewRowsIsNotJudged() {
    assertEquals(List.of(), ReviewTable.review(table(7, 5)));
    assertEquals(List.of(), ReviewTable.review(List.of()));
  }

  private static List<ReviewTable.Row> table(int count, long seed) {
    Random random = new Random(seed);
    List<ReviewTable.Row> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double size = random.nextDouble();
      Map<String, Double> numbers = new LinkedHashMap<>();
      numbers.put("weight_g", 20 * Math.exp(3 * size + 0.05 * random.nextGaussian()));
      numbers.put("area_cm2", 60 * Math.exp(2 * size + 0.05 * random.nextGaussian()));
      numbers.put("diameter_mm", 90 * Math.exp(size + 0.05 * random.nextGaussian()));
      rows.add(new ReviewTable.Row("row " + i, "", numbers));
    }
    return rows;
  }
}
