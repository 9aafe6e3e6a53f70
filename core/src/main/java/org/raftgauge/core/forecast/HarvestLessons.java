// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.HarvestTotal;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.cohort.CohortRule;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.SiteLook;

/**
 * Lets whole harvested rafts teach a grader: what each weighed, beside what the evening before it
 * would have told with nothing later in sight.
 */
public final class HarvestLessons {
  /** Latest days of harvest that teach; a working value. */
  private static final int MOST_DAYS = 8;

  private final CropBook book;
  private final List<SiteLook> looks;
  private final Grader grader;
  private final FinishedCycles.Memory memory = new FinishedCycles.Memory();

  private HarvestLessons(CropBook book, List<SiteLook> looks, Grader grader) {
    this.book = book;
    this.looks = looks;
    this.grader = grader;
  }

  /**
   * Teaches.
   *
   * @param book the crop book, with its harvests
   * @param looks what photos that count said
   * @param grader fitted on single plants
   * @return the grader as harvests leave it, with remarks of what they moved or why they did not
   */
  public static Grader teach(CropBook book, List<SiteLook> looks, Grader grader) {
    HarvestLessons lessons = new HarvestLessons(book, looks, grader);
    TreeMap<LocalDate, List<HarvestTotal>> days = new TreeMap<>(Comparator.reverseOrder());
    for (HarvestTotal harvest : book.diary().harvests()) {
      LocalDate day = book.farmDay().evening(harvest.harvestedAt().toInstant());
      days.computeIfAbsent(day, d -> new ArrayList<>()).add(harvest);
    }
    List<HarvestLesson> all = new ArrayList<>();
    int used = 0;
    for (Map.Entry<LocalDate, List<HarvestTotal>> day : days.entrySet()) {
      List<HarvestLesson> found =
          used < MOST_DAYS ? lessons.on(day.getKey(), day.getValue()) : List.of();
      used += found.isEmpty() ? 0 : 1;
      all.addAll(found);
    }
    return LearnHarvests.of(grader, all);
  }

  private List<HarvestLesson> on(LocalDate day, List<HarvestTotal> harvests) {
    LocalDate evening = day.minusDays(1);
    CropBook known = BookAsOf.of(book, evening);
    Set<List<Object>> cohorts = new HashSet<>();
    harvests.forEach(
        h ->
            known.plantingsOn(h.raft(), evening).stream()
                .filter(p -> p.crop().equals(grader.crop()))
                .forEach(p -> cohorts.add(cohort(p))));
    List<PlantSeries> series =
        cohorts.isEmpty()
            ? List.of()
            : CollectSeries.upTo(known, looks, evening).stream()
                .filter(s -> cohorts.contains(cohort(s.planting())))
                .toList();
    if (series.isEmpty()) {
      return List.of();
    }
    Instant end = known.farmDay().start(day);
    List<SiteLook> before =
        looks.stream().filter(l -> l.takenAt().toInstant().isBefore(end)).toList();
    FinishedCycles past = FinishedCycles.of(known, before, CohortRule.defaults(), memory);
    Asked asked = new Asked(evening, ForecastRule.defaults().withDays(1));
    Map<String, List<Outlook>> rafts =
        Outlooks.of(known, series, new Outlooks.Past(past, Map.of()), asked).plants().stream()
            .collect(Collectors.groupingBy(p -> p.planting().raft()));
    Weighing weighing = new Weighing(grader);
    return harvests.stream()
        .map(h -> HarvestLesson.of(h, rafts.getOrDefault(h.raft(), List.of()), weighing, 1))
        .flatMap(Optional::stream)
        .toList();
  }

  private static List<Object> cohort(Planting planting) {
    return List.of(planting.crop(), planting.variety(), planting.startsOn());
  }
}
