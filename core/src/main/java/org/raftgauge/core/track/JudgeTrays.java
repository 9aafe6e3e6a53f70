// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.TransplantRule;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.Sight;

/**
 * Says how the young plants of trays stand: those on days after sowing.
 *
 * <p>A cell likely holds two plants where the odds for an area 1.8 times the usual (two plants
 * overlap a little) beat those for one, both lognormal about the tray's middle with its spread, at
 * three double-sown cells in a hundred beforehand (our own choice).
 */
public final class JudgeTrays {
  private static final double DOUBLE_LN = Math.log(1.8);
  private static final double DOUBLES_BEFORE = 0.03;
  private static final double LEAST_SPREAD = 0.1;
  private static final int FEWEST = 3;

  private JudgeTrays() {}

  /**
   * Looks at all trays that were seen on an evening.
   *
   * @param book the crop book
   * @param series what was seen of each plant, nothing later than the evening
   * @param evening the evening
   * @return trays by name, in order
   */
  public static Map<String, Tray> judge(
      CropBook book, List<PlantSeries> series, LocalDate evening) {
    List<PlantSeries> young =
        series.stream()
            .filter(s -> s.clock() == PlantSeries.AgeClock.SOWING)
            .filter(s -> s.last().evening().equals(evening))
            .toList();
    Map<String, List<PlantSeries>> trays = new TreeMap<>();
    for (PlantSeries cell : CollectSeries.standing(book, young, evening)) {
      trays.computeIfAbsent(cell.last().raft(), r -> new ArrayList<>()).add(cell);
    }
    Map<String, Tray> judged = new TreeMap<>();
    trays.forEach((raft, cells) -> judged.put(raft, tray(book, raft, oldest(cells))));
    return judged;
  }

  /** Returns the cells of a tray's first sowing: cells that were sown anew do not count. */
  private static List<PlantSeries> oldest(List<PlantSeries> cells) {
    LocalDate first =
        cells.stream().map(PlantSeries::since).min(Comparator.naturalOrder()).orElseThrow();
    return cells.stream().filter(c -> c.since().equals(first)).toList();
  }

  private static Tray tray(CropBook book, String raft, List<PlantSeries> cells) {
    Optional<Crop> crop = book.crop(cells.get(0).planting());
    List<Tray.Emerged> days = days(cells);
    double[] areas =
        cells.stream()
            .map(PlantSeries::last)
            .filter(Sight::hasArea)
            .mapToDouble(Sight::areaCm2)
            .toArray();
    Optional<TransplantRule> rule = crop.flatMap(Crop::transplant);
    OptionalDouble big =
        rule.map(r -> OptionalDouble.of(share(cells, r))).orElse(OptionalDouble.empty());
    double das = days.get(days.size() - 1).das();
    OptionalDouble due = crop.map(Crop::emergedByDas).orElse(OptionalDouble.empty());
    return new Tray(
        raft,
        cells.get(0).planting().crop(),
        cells.get(0).since(),
        days,
        HalfEmergence.of(days),
        variation(areas),
        due.isPresent() && das >= due.getAsDouble() ? none(cells) : List.of(),
        several(cells, areas),
        big,
        rule.filter(r -> big.orElse(0) >= r.share()).isPresent());
  }

  private static List<Tray.Emerged> days(List<PlantSeries> cells) {
    TreeMap<LocalDate, Double> evenings = new TreeMap<>();
    for (PlantSeries cell : cells) {
      cell.sights().forEach(s -> evenings.put(s.evening(), s.ageDays()));
    }
    List<Tray.Emerged> days = new ArrayList<>();
    evenings.forEach(
        (evening, das) -> {
          long emerged = cells.stream().filter(c -> emergedBy(c, evening)).count();
          days.add(new Tray.Emerged(evening, das, (int) emerged, cells.size()));
        });
    return days;
  }

  private static boolean emergedBy(PlantSeries cell, LocalDate evening) {
    return cell.sights().stream()
        .filter(s -> !s.evening().isAfter(evening))
        .anyMatch(Sight::hasArea);
  }

  private static double share(List<PlantSeries> cells, TransplantRule rule) {
    long big =
        cells.stream()
            .map(PlantSeries::last)
            .filter(s -> s.hasArea() && s.areaCm2() >= rule.areaCm2())
            .count();
    return (double) big / cells.size();
  }

  private static OptionalDouble variation(double[] areas) {
    if (areas.length < FEWEST) {
      return OptionalDouble.empty();
    }
    double mean = 0;
    for (double area : areas) {
      mean += area / areas.length;
    }
    double squares = 0;
    for (double area : areas) {
      squares += (area - mean) * (area - mean) / (areas.length - 1);
    }
    return OptionalDouble.of(Math.sqrt(squares) / mean);
  }

  private static List<SiteId> none(List<PlantSeries> cells) {
    return cells.stream()
        .filter(c -> c.sights().stream().noneMatch(Sight::hasArea) && c.last().bare())
        .map(PlantSeries::site)
        .sorted()
        .toList();
  }

  private static List<SiteId> several(List<PlantSeries> cells, double[] areas) {
    if (areas.length < FEWEST) {
      return List.of();
    }
    RobustCentre usual = RobustCentre.of(Arrays.stream(areas).map(Math::log).toArray());
    double s = Math.max(LEAST_SPREAD, usual.spread());
    double odds = Math.log((1 - DOUBLES_BEFORE) / DOUBLES_BEFORE);
    // Two normals of one spread: even odds lie half way plus what the odds beforehand ask.
    double limit = usual.centre() + DOUBLE_LN / 2 + s * s / DOUBLE_LN * odds;
    return cells.stream()
        .filter(c -> c.last().hasArea() && Math.log(c.last().areaCm2()) > limit)
        .map(PlantSeries::site)
        .sorted()
        .toList();
  }
}
