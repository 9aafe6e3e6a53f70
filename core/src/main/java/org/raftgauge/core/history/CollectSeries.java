// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.PlantSeries.AgeClock;

/** Strings the looks at sites together to what was seen of each plant. */
public final class CollectSeries {
  private final WhoGrewWhere plants;
  private final FarmDay farmDay;
  private final Instant tonight;
  private final Set<String> exchanging = new HashSet<>();
  private final List<Seen> all = new ArrayList<>();

  /** By plant, what it is seen as now: looks at it come in the order of time. */
  private final Map<String, Seen> now = new HashMap<>();

  /** A stretch of a plant's life on one clock: since transplanting, since a cut, since sowing. */
  private record Growth(String plant, LocalDate since, AgeClock clock) {
    private static final Comparator<Growth> ORDER =
        Comparator.comparing(Growth::plant)
            .thenComparing(Growth::since)
            .thenComparing(Growth::clock);

    /** Says whether another growth of the same plant is this one. */
    boolean sameClock(Growth other) {
      return clock == other.clock && since.equals(other.since);
    }
  }

  /** What was seen of one growth, and where it last stood. */
  private static final class Seen {
    private final Growth growth;
    private final List<Sight> sights = new ArrayList<>();
    private Planting planting;
    private SiteId site;

    Seen(Growth growth) {
      this.growth = growth;
    }
  }

  private CollectSeries(CropBook book, LocalDate evening) {
    this.plants = WhoGrewWhere.of(book);
    this.farmDay = book.farmDay();
    this.tonight = farmDay.start(evening.plusDays(1)).minusNanos(1);
    for (PlantLife life : book.plants()) {
      if (life.stays().size() > 1) {
        life.stays().forEach(stay -> exchanging.add(stay.planting().raft()));
      }
    }
  }

  /**
   * Takes the looks up to the evening that pass, those at each plant in the order of time: raft by
   * raft, for what is near in memory comes fast, and rafts that exchanged plants together.
   */
  private CollectSeries with(List<SiteLook> looks, Predicate<RaftLooks> which) {
    RaftLooks.of(looks).stream()
        .filter(raft -> !raft.at().isAfter(tonight))
        .filter(which)
        .sorted(Comparator.comparing(this::group).thenComparing(RaftLooks.BY_TIME))
        .forEach(this::add);
    return this;
  }

  private String group(RaftLooks raft) {
    return exchanging.contains(raft.raft()) ? "" : raft.raft();
  }

  /** Passes the looks at rafts since a plant that stands tonight first stood there. */
  private Predicate<RaftLooks> ofStanding(CropBook book) {
    Map<String, Instant> since = new HashMap<>();
    for (PlantLife life : book.plants()) {
      if (life.stays().stream().anyMatch(stay -> stay.holdsAt(tonight))) {
        life.stays()
            .forEach(
                stay ->
                    since.merge(
                        stay.planting().raft(), stay.from(), (a, b) -> a.isBefore(b) ? a : b));
      }
    }
    return raft -> since.containsKey(raft.raft()) && !raft.at().isBefore(since.get(raft.raft()));
  }

  /**
   * Collects the series of all plants, as known on an evening.
   *
   * <p>Looks later than that evening are left out, and so is what a plant did before it was last
   * cut or transplanted. Of several looks at a plant in one evening the last counts; which photo of
   * an evening counts is settled before. A plant that has left, or whose age is not known, has no
   * series.
   *
   * @param book the crop book
   * @param looks what photos that count said, in any order
   * @param evening the farm's day up to which is looked
   * @return series of the plants that still stand somewhere at the end of that evening, sorted by
   *     plant
   */
  public static List<PlantSeries> upTo(CropBook book, List<SiteLook> looks, LocalDate evening) {
    CollectSeries collect = new CollectSeries(book, evening);
    collect.with(looks, collect.ofStanding(book));
    return collect.series(growth -> collect.now(growth.plant()).filter(growth::equals).isPresent());
  }

  /**
   * Collects the series of all plants as {@link #upTo} does, and those of plants that have left
   * since and of growth before a cut or transplanting: the past cycles.
   *
   * @param book the crop book
   * @param looks what photos that count said, in any order
   * @param evening the farm's day up to which is looked
   * @return all series, sorted by plant, then by the day that they count from
   */
  public static List<PlantSeries> withEnded(
      CropBook book, List<SiteLook> looks, LocalDate evening) {
    return new CollectSeries(book, evening).with(looks, look -> true).series(growth -> true);
  }

  /**
   * Finds the series of plants that still stand at the end of an evening, on the clock of then.
   *
   * @param book the crop book
   * @param series any series
   * @param evening the farm's day
   * @return those of them, in their order
   */
  public static List<PlantSeries> standing(
      CropBook book, List<PlantSeries> series, LocalDate evening) {
    CollectSeries collect = new CollectSeries(book, evening);
    return series.stream()
        .filter(
            s ->
                collect
                    .now(s.plant())
                    .filter(new Growth(s.plant(), s.since(), s.clock())::equals)
                    .isPresent())
        .toList();
  }

  private void add(RaftLooks raft) {
    LocalDate evening = farmDay.evening(raft.at());
    WhoGrewWhere.OnRaft there = plants.on(raft.raft(), raft.at());
    for (SiteLook look : raft.looks()) {
      Optional<Grown> found = there.at(look.measure().site());
      if (found.isPresent() && found.get().age().isPresent()) {
        add(look, found.get(), evening, growth(found.get(), there.day()));
      }
    }
  }

  private void add(SiteLook look, Grown grown, LocalDate evening, Growth growth) {
    Seen seen = seen(growth);
    seen.planting = grown.planting();
    seen.site = look.measure().site();
    List<Sight> sights = seen.sights;
    if (!sights.isEmpty() && sights.get(sights.size() - 1).evening().equals(evening)) {
      sights.remove(sights.size() - 1);
    }
    sights.add(
        new Sight(
            evening,
            look.takenAt(),
            look.photo(),
            look.station(),
            look.raft(),
            grown.age().getAsDouble(),
            look.measure()));
  }

  private Seen seen(Growth growth) {
    Seen seen = now.get(growth.plant());
    if (seen == null || !seen.growth.sameClock(growth)) {
      seen = new Seen(growth);
      now.put(growth.plant(), seen);
      all.add(seen);
    }
    return seen;
  }

  /** Returns what a plant stands in at the end of the evening. */
  private Optional<PlantLife.Stay> stay(String plant) {
    return plants.life(plant).stream()
        .flatMap(life -> life.stays().stream())
        .filter(stay -> stay.holdsAt(tonight))
        .findFirst();
  }

  private Optional<Growth> now(String plant) {
    return stay(plant)
        .flatMap(stay -> plants.at(stay.planting().raft(), stay.site(), tonight))
        .filter(grown -> grown.age().isPresent())
        .map(grown -> growth(grown, tonight.atZone(farmDay.zone()).toLocalDate()));
  }

  private List<PlantSeries> series(Predicate<Growth> which) {
    List<PlantSeries> series = new ArrayList<>();
    all.sort(Comparator.comparing((Seen seen) -> seen.growth, Growth.ORDER));
    for (Seen seen : all) {
      Growth growth = seen.growth;
      if (which.test(growth)) {
        Optional<PlantLife.Stay> stay = stay(growth.plant());
        series.add(
            new PlantSeries(
                growth.plant(),
                stay.map(PlantLife.Stay::planting).orElse(seen.planting),
                stay.map(PlantLife.Stay::site).orElse(seen.site),
                growth.clock(),
                growth.since(),
                seen.sights));
      }
    }
    return series;
  }

  private static Growth growth(Grown grown, LocalDate day) {
    long days = (long) Math.floor(grown.age().orElseThrow());
    return new Growth(grown.plant(), day.minusDays(days), clock(grown));
  }

  private static AgeClock clock(Grown grown) {
    if (grown.dac().isPresent()) {
      return AgeClock.CUT;
    }
    return grown.dat().isPresent() ? AgeClock.TRANSPLANT : AgeClock.SOWING;
  }
}
