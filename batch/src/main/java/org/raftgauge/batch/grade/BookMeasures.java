// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.forecast.CurveAreas;
import org.raftgauge.core.grader.JoinWeighings;
import org.raftgauge.core.grader.JoinWeighings.Subject;
import org.raftgauge.core.grader.Sighting;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.Grown;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.history.WhoGrewWhere;
import org.raftgauge.core.site.SiteMeasure;

/** What the photos that count say of a book's plants, each board the right way round. */
final class BookMeasures {
  /** A plant may be written down as taken before the scale's time: how long before is looked. */
  private static final List<Duration> LOOK_BACK =
      List.of(
          Duration.ZERO,
          Duration.ofMinutes(1),
          Duration.ofHours(3),
          Duration.ofHours(12),
          Duration.ofHours(24));

  private final CropBook book;
  private final List<SiteLook> looks;
  private final WhoGrewWhere who;
  private final Map<LocalDate, Map<String, Double>> curveAreas = new HashMap<>();
  private final Map<LocalDate, Set<String>> brown = new HashMap<>();

  /**
   * Wraps.
   *
   * @param book the crop book
   * @param looks what photos that count said, settled as for verdicts
   */
  BookMeasures(CropBook book, List<SiteLook> looks) {
    this.book = book;
    this.looks = looks;
    this.who = WhoGrewWhere.of(book);
  }

  /** Joins a crop's weighings with the nearest photos; those of no known plant are named too. */
  JoinWeighings.Joined join(String crop, List<Weighing> weighings, Duration within) {
    Map<Integer, Grown> plants = new HashMap<>();
    TreeSet<String> rafts = new TreeSet<>();
    List<Weighing> own = new ArrayList<>();
    for (Weighing weighing : weighings) {
      Optional<Grown> grown = plant(weighing);
      if (grown.map(g -> g.planting().crop().equals(crop)).orElse(true)) {
        grown.ifPresent(g -> plants.put(weighing.line(), g));
        rafts.add(weighing.raft());
        own.add(weighing);
      }
    }
    List<Sighting> seen = sightings(rafts);
    Map<Integer, Subject> subjects = new LinkedHashMap<>();
    Map<String, List<Sighting>> byPlant =
        seen.stream().collect(Collectors.groupingBy(Sighting::plant));
    for (Weighing weighing : own) {
      Optional.ofNullable(plants.get(weighing.line()))
          .ifPresent(
              g ->
                  subjects.put(
                      weighing.line(),
                      subject(weighing, g, byPlant.getOrDefault(g.plant(), List.of()))));
    }
    return JoinWeighings.join(own, subjects, seen, within);
  }

  private Subject subject(Weighing weighing, Grown grown, List<Sighting> seen) {
    Planting planting = grown.planting();
    return new Subject(
        grown.plant(),
        planting.crop(),
        planting.variety(),
        brown(book.farmDay().evening(weighing.weighedAt().toInstant())).contains(grown.plant()),
        curveArea(weighing, grown, seen));
  }

  /** Returns the plants that were brown as a whole by an evening. */
  private Set<String> brown(LocalDate evening) {
    return brown.computeIfAbsent(
        evening,
        e ->
            CollectSeries.withEnded(book, looks, e).stream()
                .filter(PlantSeries::brown)
                .map(PlantSeries::plant)
                .collect(Collectors.toSet()));
  }

  /** Tells the area by the plant's own curve, of plants that were closed when last seen. */
  private OptionalDouble curveArea(Weighing weighing, Grown grown, List<Sighting> seen) {
    Optional<Sighting> last =
        seen.stream()
            .filter(s -> !s.takenAt().isAfter(weighing.weighedAt()) && s.held().isEmpty())
            .max(Comparator.comparing(s -> s.takenAt().toInstant()));
    if (last.filter(Sighting::closed).isEmpty()) {
      return OptionalDouble.empty();
    }
    LocalDate evening = book.farmDay().evening(last.get().takenAt().toInstant());
    Double area =
        curveAreas.computeIfAbsent(evening, e -> CurveAreas.on(book, looks, e)).get(grown.plant());
    return area == null ? OptionalDouble.empty() : OptionalDouble.of(area);
  }

  private Optional<Grown> plant(Weighing weighing) {
    Instant at = weighing.weighedAt().toInstant();
    return LOOK_BACK.stream()
        .map(back -> who.at(weighing.raft(), weighing.site(), at.minus(back)))
        .flatMap(Optional::stream)
        .findFirst();
  }

  /** Returns all that photos say of the plants of rafts. */
  List<Sighting> sightings(Set<String> rafts) {
    List<Sighting> sightings = new ArrayList<>();
    for (SiteLook look : looks) {
      if (rafts.contains(look.raft())) {
        who.at(look.raft(), look.measure().site(), look.takenAt().toInstant())
            .ifPresent(grown -> sightings.add(sighting(look, grown)));
      }
    }
    return sightings;
  }

  private static Sighting sighting(SiteLook look, Grown grown) {
    return new Sighting(
        look.raft(),
        look.measure().site(),
        grown.plant(),
        look.takenAt(),
        look.photo(),
        look.measure().projectedAreaCm2(),
        look.measure().closed(),
        look.measure().held(),
        seen(look.measure()));
  }

  private static Optional<Sighting.SeenHeight> seen(SiteMeasure site) {
    return site.relief().stream()
        .map(r -> new Sighting.SeenHeight(site.heightMm(), r.p95Mm()))
        .findFirst();
  }

  /** Returns ids of plants that are brown as a whole, by what was seen up to an instant. */
  Set<String> brown(Instant at) {
    return CollectSeries.upTo(book, looks, book.farmDay().evening(at)).stream()
        .filter(PlantSeries::brown)
        .map(PlantSeries::plant)
        .collect(Collectors.toSet());
  }

  /** Returns the plant of a site at an instant. */
  Optional<Grown> grown(Sighting sighting, Instant at) {
    return who.at(sighting.raft(), sighting.site(), at);
  }

  CropBook book() {
    return book;
  }
}
