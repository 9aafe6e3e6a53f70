// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.raftgauge.core.book.ClimateDay;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HarvestTotal;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Planting;

/**
 * What a pond yielded from its light and water: harvests over all days that {@code climate.csv}
 * tells of it, from its first planting to its last harvest.
 *
 * @param pond the pond
 * @param from first day counted
 * @param to last day counted
 * @param harvestedG harvested from then to then, g
 * @param lightMol light on the rafts' boards, mol, where the book tells it
 * @param gPerMol grams a mol of light
 * @param waterL water added, litres; rows of the whole house are not shared out
 * @param gPerLitre grams a litre
 * @param daysWithLight days of which light is known
 * @param daysWithWater days of which water is known
 */
public record Resources(
    String pond,
    LocalDate from,
    LocalDate to,
    double harvestedG,
    OptionalDouble lightMol,
    OptionalDouble gPerMol,
    OptionalDouble waterL,
    OptionalDouble gPerLitre,
    int daysWithLight,
    int daysWithWater) {

  /**
   * Adds up.
   *
   * @param book the crop book
   * @return ponds with harvests and light or water, sorted
   */
  public static List<Resources> of(CropBook book) {
    Map<String, List<HarvestTotal>> ponds = new TreeMap<>();
    for (HarvestTotal harvest : book.diary().harvests()) {
      LocalDate day = book.farmDay().evening(harvest.harvestedAt().toInstant());
      for (Planting planting : book.plantingsOn(harvest.raft(), day)) {
        List<HarvestTotal> own = ponds.computeIfAbsent(planting.pond(), p -> new ArrayList<>());
        if (!own.contains(harvest)) {
          own.add(harvest);
        }
      }
    }
    List<Resources> all = new ArrayList<>();
    ponds.forEach((pond, harvests) -> all.add(pond(book, pond, harvests)));
    all.removeIf(r -> r.lightMol().isEmpty() && r.waterL().isEmpty());
    return all;
  }

  private static Resources pond(CropBook book, String pond, List<HarvestTotal> harvests) {
    LocalDate from =
        book.plantings().stream()
            .filter(p -> p.pond().equals(pond))
            .map(Planting::startsOn)
            .min(LocalDate::compareTo)
            .orElseThrow();
    LocalDate to =
        harvests.stream()
            .map(h -> book.farmDay().evening(h.harvestedAt().toInstant()))
            .max(LocalDate::compareTo)
            .orElseThrow();
    double grams = harvests.stream().mapToDouble(HarvestTotal::totalWeightG).sum();
    double mol = 0;
    double litres = 0;
    int lightDays = 0;
    int waterDays = 0;
    for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(1)) {
      OptionalDouble light = on(book, pond, day, ClimateDay::dliMolM2);
      OptionalDouble house = light.isPresent() ? light : on(book, "", day, ClimateDay::dliMolM2);
      OptionalDouble water = on(book, pond, day, ClimateDay::waterL);
      mol += house.orElse(0) * boardM2(book, pond, day);
      litres += water.orElse(0);
      lightDays += house.isPresent() ? 1 : 0;
      waterDays += water.isPresent() ? 1 : 0;
    }
    return new Resources(
        pond,
        from,
        to,
        grams,
        known(mol),
        known(mol > 0 ? grams / mol : 0),
        known(litres),
        known(litres > 0 ? grams / litres : 0),
        lightDays,
        waterDays);
  }

  private static OptionalDouble known(double amount) {
    return amount > 0 ? OptionalDouble.of(amount) : OptionalDouble.empty();
  }

  private static OptionalDouble on(
      CropBook book, String pond, LocalDate day, Function<ClimateDay, OptionalDouble> which) {
    return book.diary().climate().stream()
        .filter(c -> c.pond().equals(pond) && c.date().equals(day))
        .map(which)
        .flatMapToDouble(OptionalDouble::stream)
        .findFirst();
  }

  /** Returns the area of the boards that float on a pond, m2. */
  private static double boardM2(CropBook book, String pond, LocalDate day) {
    double sum = 0;
    Set<String> counted = new HashSet<>();
    for (String raft : book.expectedRafts(day)) {
      for (Planting planting : book.plantingsOn(raft, day)) {
        if (planting.pond().equals(pond) && counted.add(raft)) {
          sum += book.layout(planting.layout(), day).map(Resources::m2).orElse(0.0);
        }
      }
    }
    return sum;
  }

  private static double m2(Layout layout) {
    return layout.board().widthMm() * layout.board().lengthMm() / 1e6;
  }
}
