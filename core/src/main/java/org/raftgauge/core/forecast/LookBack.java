// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
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
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.history.SiteLook;

/**
 * Replays cycles that are over: on each earlier evening the forecast is made again with nothing
 * later in sight, and held against what the raft yielded.
 *
 * <p>The grader is today's. Where it was fitted on weighings after the replayed evening, the row
 * says so ({@code hindsight}): such rows flatter the program.
 */
public final class LookBack {
  private static final int LATEST_DAYS = 2;

  private final CropBook book;
  private final Known known;
  private final Map<String, Grader> graders;
  private final ForecastRule rule;
  private FinishedCycles.Memory memory = new FinishedCycles.Memory();
  private List<SiteLook> looks = List.of();

  private LookBack(CropBook book, Known known, Map<String, Grader> graders, ForecastRule rule) {
    this.book = book;
    this.known = known;
    this.graders = graders;
    this.rule = rule;
  }

  /** What photos that count said, as it was known on earlier evenings. */
  public interface Known {

    /**
     * Tells what was known as an evening ended: photos as corrected by then. Later photos may be
     * among them.
     *
     * @param evening the farm's day
     * @return looks in a stable order; the same list where the same is known
     */
    List<SiteLook> on(LocalDate evening);
  }

  /**
   * How far ahead is asked.
   *
   * @param leadDays days from evening to harvest, each 0 to 60
   * @param rule of the forecasts
   * @param since harvests before this day are left out
   */
  public record Leads(List<Integer> leadDays, ForecastRule rule, LocalDate since) {
    /** Copies the days. */
    public Leads {
      leadDays = List.copyOf(leadDays);
    }

    /** Returns 1, 2, 3, 5, 7, 10 and 14 days with the usual rule. */
    public static Leads defaults() {
      return new Leads(List.of(1, 2, 3, 5, 7, 10, 14), ForecastRule.defaults(), LocalDate.MIN);
    }

    /**
     * Returns 3 and 7 days for the latest two days of harvest of a book: quick enough for every
     * evening.
     *
     * @param book the crop book
     */
    public static Leads latest(CropBook book) {
      List<LocalDate> days =
          book.diary().harvests().stream()
              .map(h -> book.farmDay().evening(h.harvestedAt().toInstant()))
              .distinct()
              .sorted(Comparator.reverseOrder())
              .limit(LATEST_DAYS)
              .toList();
      LocalDate since = days.isEmpty() ? LocalDate.MAX : days.get(days.size() - 1);
      return new Leads(List.of(3, 7), ForecastRule.defaults(), since);
    }
  }

  /**
   * Replays from looks that nobody corrected.
   *
   * @param book the crop book, with its harvests
   * @param looks what photos that count said
   * @param graders by crop
   * @param leads how far ahead
   * @return rows as of {@link #of(CropBook, Known, Map, Leads)}
   */
  public static List<LookBackRow> of(
      CropBook book, List<SiteLook> looks, Map<String, Grader> graders, Leads leads) {
    return of(book, (Known) evening -> looks, graders, leads);
  }

  /**
   * Replays.
   *
   * @param book the crop book, with its harvests
   * @param known what was known on earlier evenings
   * @param graders by crop
   * @param leads how far ahead
   * @return a row for each harvest and lead time at which the raft had a forecast with a weight,
   *     sorted by harvest day, raft and lead
   */
  public static List<LookBackRow> of(
      CropBook book, Known known, Map<String, Grader> graders, Leads leads) {
    LookBack back = new LookBack(book, known, graders, leads.rule());
    TreeMap<LocalDate, List<HarvestTotal>> evenings = new TreeMap<>();
    for (HarvestTotal harvest : book.diary().harvests()) {
      LocalDate day = back.evening(harvest.harvestedAt());
      List<Integer> asked = day.isBefore(leads.since()) ? List.<Integer>of() : leads.leadDays();
      for (int lead : asked) {
        evenings.computeIfAbsent(day.minusDays(lead), e -> new ArrayList<>()).add(harvest);
      }
    }
    List<LookBackRow> rows = new ArrayList<>();
    evenings.forEach((evening, harvests) -> rows.addAll(back.replay(evening, harvests)));
    rows.sort(
        Comparator.comparing(LookBackRow::harvestedOn)
            .thenComparing(LookBackRow::raft)
            .thenComparing(LookBackRow::leadDays));
    return rows;
  }

  private LocalDate evening(OffsetDateTime at) {
    return book.farmDay().evening(at.toInstant());
  }

  /** Sees what was known on an evening; what was collected of other looks is forgotten. */
  private void see(LocalDate evening) {
    List<SiteLook> then = known.on(evening);
    if (then != looks) {
      looks = then;
      memory = new FinishedCycles.Memory();
    }
  }

  private List<LookBackRow> replay(LocalDate evening, List<HarvestTotal> harvests) {
    see(evening);
    CropBook bookThen = BookAsOf.of(book, evening);
    Set<List<Object>> cohorts = new HashSet<>();
    for (HarvestTotal harvest : harvests) {
      bookThen.plantingsOn(harvest.raft(), evening).forEach(p -> cohorts.add(cohort(p)));
    }
    if (cohorts.isEmpty()
        || looks.stream().noneMatch(l -> !evening(l.takenAt()).isAfter(evening))) {
      return List.of();
    }
    int longest =
        harvests.stream()
            .mapToInt(h -> (int) ChronoUnit.DAYS.between(evening, evening(h.harvestedAt())))
            .max()
            .orElse(1);
    Asked asked = new Asked(evening, rule.withDays(Math.max(1, longest)));
    Set<String> rafts = harvests.stream().map(HarvestTotal::raft).collect(Collectors.toSet());
    Map<String, List<RaftForecast>> forecasts =
        ForecastEvening.of(
                bookThen,
                looks,
                graders,
                new ForecastEvening.Some(
                    asked, (Planting p) -> cohorts.contains(cohort(p)), rafts, memory))
            .stream()
            .collect(Collectors.groupingBy(r -> r.who().raft()));
    List<LookBackRow> rows = new ArrayList<>();
    for (HarvestTotal harvest : harvests) {
      List<RaftForecast> own = forecasts.getOrDefault(harvest.raft(), List.of());
      row(evening, own, harvest).ifPresent(rows::add);
    }
    return rows;
  }

  private static List<Object> cohort(Planting planting) {
    return List.of(planting.crop(), planting.variety(), planting.startsOn());
  }

  private Optional<LookBackRow> row(
      LocalDate evening, List<RaftForecast> own, HarvestTotal harvest) {
    LocalDate day = evening(harvest.harvestedAt());
    int lead = (int) ChronoUnit.DAYS.between(evening, day);
    boolean weighed = own.stream().allMatch(r -> r.day(lead).weight().isPresent());
    if (own.isEmpty() || !weighed || harvest.totalWeightG() <= 0) {
      return Optional.empty();
    }
    Totals total = Totals.zero(rule.draws());
    double heads = 0;
    for (RaftForecast raft : own) {
      total = total.plus(raft.day(lead).weight().orElseThrow());
      heads += raft.heads(lead);
    }
    String crop = own.get(0).who().crop();
    boolean hindsight =
        evening(OffsetDateTime.parse(graders.get(crop).origin().lastWeighed())).isAfter(evening);
    return Optional.of(
        new LookBackRow(
            harvest.raft(),
            crop,
            evening,
            day,
            lead,
            total.amount(),
            heads,
            harvest.totalWeightG(),
            harvest.heads(),
            hindsight));
  }
}
