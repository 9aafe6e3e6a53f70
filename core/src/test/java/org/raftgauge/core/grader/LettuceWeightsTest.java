// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.marker.SharedData;

/**
 * Holds the statistics to hand-weighed lettuce of four varieties (Hemming and others 2021,
 * doi:10.4121/15023088.v1; see SOURCE.md of the shared data). The leaf area is total, not
 * projected: a check of the statistics, not of the camera.
 */
class LettuceWeightsTest {

  @Test
  void plantLeftOutIsMissedByAtMostElevenPercentByAreaAndVariety() throws IOException {
    RegimeFit fit = FitRegime.fit(plants(Row::leafCm2), Set.of(Size.AREA)).orElseThrow();
    assertTrue(fit.hasVarietyTerms());
    // The target that the issue sets.
    assertTrue(fit.numbers().leftOut().meanShare() <= 0.11, fit.numbers().leftOut().toString());
  }

  @Test
  void discAndHeightMissByAtLeastAThirdLessThanTheBaseline() throws IOException {
    RegimeFit fit =
        FitRegime.fit(plants(Row::discCm2), Set.of(Size.AREA, Size.HEIGHT)).orElseThrow();
    // SOURCE.md: the baseline from disc and height misses by 54 %, in sample.
    assertTrue(
        fit.numbers().leftOut().meanShare() <= 0.54 * 2 / 3, fit.numbers().leftOut().toString());
  }

  @Test
  void oddRowsAreNamedWithTheirColumnAndWhy() throws IOException {
    List<Suspect> found =
        ReviewTable.review(
            rows().stream()
                .map(r -> new ReviewTable.Row("plant " + r.id(), r.variety(), r.numbers()))
                .toList());
    // By eye in the file: 0.36 g dry of a plant of 57.6 g fresh; 12.3 cm across at 1976 cm2.
    Suspect slip = of(found, "plant 163");
    assertEquals("dry_weight_g", slip.column());
    assertEquals(Suspect.Kind.SLIPPED_DECIMAL, slip.kind());
    assertTrue(slip.why().endsWith("a slipped decimal point? 3.600 would fit"), slip.why());
    assertEquals("diameter_cm", of(found, "plant 333").column());
    // Some real plants are unlike the others; a review of hundreds would be of no use.
    assertTrue(found.size() <= 20, found.size() + " of 231 rows are named");
  }

  @Test
  void seedlingsThatDifferAsAGroupAreNotAllNamed() throws IOException {
    // The twelve youngest plants are 4 to 7 % dry matter, their elders 8 to 12 %.
    long named =
        ReviewTable.review(
                rows().stream()
                    .map(r -> new ReviewTable.Row(r.id(), r.variety(), r.numbers()))
                    .toList())
            .stream()
            .filter(s -> Integer.parseInt(s.row()) <= 19)
            .count();
    assertTrue(named <= 4, named + " of 12 are named");
  }

  private static Suspect of(List<Suspect> found, String row) {
    return found.stream().filter(s -> s.row().equals(row)).findFirst().orElseThrow();
  }

  private static List<Weighed> plants(ToDoubleFunction<Row> area) throws IOException {
    List<Weighed> plants = new ArrayList<>();
    for (Row row : rows()) {
      Traits traits =
          new Traits(
              row.variety(),
              OptionalDouble.of(area.applyAsDouble(row)),
              OptionalDouble.of(10 * row.numbers().get("height_cm")),
              OptionalDouble.empty());
      plants.add(
          Plants.plant(
              Integer.parseInt(row.id()),
              traits,
              Regime.OPEN,
              row.numbers().get("fresh_weight_g")));
    }
    return plants;
  }

  private record Row(String id, String variety, Map<String, Double> numbers) {
    double leafCm2() {
      return numbers.get("leaf_area_cm2");
    }

    double discCm2() {
      return Math.PI / 4 * Math.pow(numbers.get("diameter_cm"), 2);
    }
  }

  private static List<Row> rows() throws IOException {
    List<String> lines =
        Files.readAllLines(SharedData.folder("data/lettuce-weights").resolve("lettuce-traits.csv"));
    String[] header = lines.get(0).split(",", -1);
    List<Row> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      Map<String, Double> numbers = new LinkedHashMap<>();
      for (int i = 2; i < cells.length; i++) {
        numbers.put(header[i], Double.parseDouble(cells[i]));
      }
      rows.add(new Row(cells[0], cells[1], numbers));
    }
    return rows;
  }
}
