// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.history.PlantSeries.AgeClock;

/** Strings the looks at sites together to what was seen of each plant. */
public final class CollectSeries {
  private static final Comparator<SiteLook> BY_TIME =
      Comparator.comparing((SiteLook look) -> look.takenAt().toInstant())
          .thenComparing(SiteLook::photo);

  private final WhoGrewWhere plants;
  private final FarmDay farmDay;
  private final Instant tonight;
  private final Map<String, Optional<Now>> standing = new HashMap<>();
  private final Map<String, List<Sight>> sights = new TreeMap<>();

  /** How a plant stands at the end of the evening. */
  private record Now(PlantLife.Stay stay, AgeClock clock, LocalDate since) {}

  private CollectSeries(CropBook book, LocalDate evening) {
    this.plants = WhoGrewWhere.of(book);
    this.farmDay = book.farmDay();
    this.tonight = farmDay.start(evening.plusDays(1)).minusNanos(1);
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
    looks.stream()
        .filter(look -> !look.takenAt().toInstant().isAfter(collect.tonight))
        .sorted(BY_TIME)
        .forEach(collect::add);
    return collect.series();
  }

  private void add(SiteLook look) {
    Instant at = look.takenAt().toInstant();
    Optional<Grown> grown = plants.at(look.raft(), look.measure().site(), at);
    if (grown.isEmpty() || grown.get().age().isEmpty()) {
      return;
    }
    String plant = grown.get().plant();
    Optional<Now> now = standing.computeIfAbsent(plant, this::now);
    boolean sameLife =
        now.filter(n -> n.clock() == clock(grown.get()) && n.since().equals(since(grown.get(), at)))
            .isPresent();
    if (!sameLife) {
      return;
    }
    List<Sight> seen = sights.computeIfAbsent(plant, p -> new ArrayList<>());
    LocalDate evening = farmDay.evening(at);
    if (!seen.isEmpty() && seen.get(seen.size() - 1).evening().equals(evening)) {
      seen.remove(seen.size() - 1);
    }
    double age = grown.get().age().getAsDouble();
    seen.add(
        new Sight(
            evening,
            look.takenAt(),
            look.photo(),
            look.station(),
            look.raft(),
            age,
            look.measure()));
  }

  private Optional<Now> now(String plant) {
    return plants.life(plant).stream()
        .flatMap(life -> life.stays().stream())
        .filter(stay -> stay.holdsAt(tonight))
        .findFirst()
        .flatMap(
            stay ->
                plants
                    .at(stay.planting().raft(), stay.site(), tonight)
                    .filter(grown -> grown.age().isPresent())
                    .map(grown -> new Now(stay, clock(grown), since(grown, tonight))));
  }

  private List<PlantSeries> series() {
    List<PlantSeries> all = new ArrayList<>();
    sights.forEach(
        (plant, seen) -> {
          Now now = standing.get(plant).orElseThrow();
          PlantLife.Stay stay = now.stay();
          all.add(
              new PlantSeries(plant, stay.planting(), stay.site(), now.clock(), now.since(), seen));
        });
    return all;
  }

  private LocalDate since(Grown grown, Instant at) {
    long days = (long) Math.floor(grown.age().orElseThrow());
    return at.atZone(farmDay.zone()).toLocalDate().minusDays(days);
  }

  private static AgeClock clock(Grown grown) {
    if (grown.dac().isPresent()) {
      return AgeClock.CUT;
    }
    return grown.dat().isPresent() ? AgeClock.TRANSPLANT : AgeClock.SOWING;
  }
}
