// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.grade;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.grader.JoinWeighings;
import org.raftgauge.core.grader.JoinWeighings.Subject;
import org.raftgauge.core.grader.Sighting;
import org.raftgauge.core.history.Grown;
import org.raftgauge.core.history.WhoGrewWhere;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** What a book's history says of its plants. */
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
  private final Path history;
  private final WhoGrewWhere who;

  BookMeasures(CropBook book, Path folder) {
    this.book = book;
    this.history = folder.resolve("history.db");
    this.who = WhoGrewWhere.of(book);
  }

  /** Returns the weighings of a crop, and of no plant, with the plants. */
  Map<Integer, Subject> subjects() {
    Map<Integer, Subject> subjects = new LinkedHashMap<>();
    for (Weighing weighing : book.diary().weighings()) {
      plant(weighing)
          .ifPresent(
              grown ->
                  subjects.put(
                      weighing.line(),
                      new Subject(
                          grown.plant(),
                          grown.planting().crop(),
                          grown.planting().variety(),
                          OptionalDouble.empty())));
    }
    return subjects;
  }

  private Optional<Grown> plant(Weighing weighing) {
    Instant at = weighing.weighedAt().toInstant();
    return LOOK_BACK.stream()
        .map(back -> who.at(weighing.raft(), weighing.site(), at.minus(back)))
        .flatMap(Optional::stream)
        .findFirst();
  }

  /** Joins a crop's weighings with the nearest photos; those of no known plant are named too. */
  JoinWeighings.Joined join(String crop, List<Weighing> weighings, Duration within)
      throws IOException {
    Map<Integer, Subject> subjects = subjects();
    List<Weighing> own =
        weighings.stream()
            .filter(
                w -> !subjects.containsKey(w.line()) || subjects.get(w.line()).crop().equals(crop))
            .toList();
    TreeSet<String> rafts = new TreeSet<>();
    own.forEach(w -> rafts.add(w.raft()));
    return JoinWeighings.join(own, subjects, sightings(rafts), within);
  }

  /** Returns all that counted photos say of the plants of rafts. */
  List<Sighting> sightings(Iterable<String> rafts) throws IOException {
    if (!Files.exists(history)) {
      return List.of();
    }
    List<Sighting> sightings = new ArrayList<>();
    try (History open = History.open(history)) {
      for (String raft : rafts) {
        for (Kept kept : open.countedRaft(raft)) {
          Optional<OffsetDateTime> at = kept.measure().takenAt();
          for (RaftMeasure measure : kept.measure().rafts()) {
            if (at.isPresent() && measure.raft().equals(Optional.of(raft))) {
              add(sightings, raft, measure, new Taken(at.get(), kept.measure().photo()));
            }
          }
        }
      }
    }
    return sightings;
  }

  private record Taken(OffsetDateTime at, String photo) {}

  private void add(List<Sighting> sightings, String raft, RaftMeasure measure, Taken taken) {
    for (SiteMeasure site : measure.sites()) {
      String held = held(measure, site);
      who.at(raft, site.site(), taken.at().toInstant())
          .ifPresent(
              grown ->
                  sightings.add(
                      new Sighting(
                          raft,
                          site.site(),
                          grown.plant(),
                          taken.at(),
                          taken.photo(),
                          site.projectedAreaCm2(),
                          site.closed(),
                          held)));
    }
  }

  /**
   * Says why a site's measure cannot be believed. The history keeps sites as the photo named them:
   * where a passing board does not tell its origin end, they may be those of the other end. A board
   * in a slot lies as it was laid there; leaves hide its mark late in the crop.
   */
  private static String held(RaftMeasure measure, SiteMeasure site) {
    if (!measure.held().isEmpty()) {
      return measure.held();
    }
    return measure.halfTurnKnown() || !measure.slot().isEmpty()
        ? site.held()
        : "the board does not show its origin end; give it markers or an orientation mark";
  }

  /** Returns the plant of a site at an instant. */
  Optional<Grown> grown(Sighting sighting, Instant at) {
    return who.at(sighting.raft(), sighting.site(), at);
  }

  CropBook book() {
    return book;
  }
}
