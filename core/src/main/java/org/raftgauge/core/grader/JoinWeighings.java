// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Weighing;

/** Joins weighings with the measure of the same plant in the photo nearest in time. */
public final class JoinWeighings {
  /** Further apart a wrong date is likelier than a late photo; a working value. */
  private static final double FAR_HOURS = 96;

  private JoinWeighings() {}

  /**
   * A weighed plant as the book knows it.
   *
   * @param plant its id
   * @param crop its crop
   * @param variety its variety, may be empty
   * @param brown whether it was brown as a whole when it was weighed
   * @param curveAreaCm2 the area its own curve from before closure gives for the hour of weighing,
   *     cm2, where there is one
   */
  public record Subject(
      String plant, String crop, String variety, boolean brown, OptionalDouble curveAreaCm2) {}

  /**
   * A weighing that could not be joined.
   *
   * @param line of {@code weighings.csv}
   * @param why in words, with the remedy
   */
  public record NotJoined(int line, String why) {}

  /**
   * What came of joining.
   *
   * @param weighed plants with weight and traits, in the file's order
   * @param notJoined the others, with why
   */
  public record Joined(List<Weighed> weighed, List<NotJoined> notJoined) {

    /** Copies the lists. */
    public Joined {
      weighed = List.copyOf(weighed);
      notJoined = List.copyOf(notJoined);
    }
  }

  /**
   * Joins.
   *
   * @param weighings rows of the book, each line once
   * @param subjects which plant each was, by line; a line that is missing was no plant of the book
   * @param sightings all that photos say of these plants
   * @param within how far photo and weighing may lie apart
   * @return what was joined and what not
   */
  public static Joined join(
      List<Weighing> weighings,
      Map<Integer, Subject> subjects,
      List<Sighting> sightings,
      Duration within) {
    Map<String, List<Sighting>> byPlant =
        sightings.stream().collect(Collectors.groupingBy(Sighting::plant));
    List<Weighed> weighed = new ArrayList<>();
    List<Sighting> nearest = new ArrayList<>();
    List<NotJoined> notJoined = new ArrayList<>();
    for (Weighing weighing : weighings) {
      Optional<Subject> subject = Optional.ofNullable(subjects.get(weighing.line()));
      List<Sighting> seen =
          subject.map(s -> byPlant.getOrDefault(s.plant(), List.of())).orElse(List.of());
      Optional<Sighting> near = nearest(weighing, seen, within);
      if (near.isPresent() && !subject.orElseThrow().brown()) {
        weighed.add(weighed(weighing, subject.orElseThrow(), near.get()));
        nearest.add(near.get());
      } else {
        notJoined.add(new NotJoined(weighing.line(), why(weighing, subject, seen)));
      }
    }
    return new Joined(SeenTops.where(weighed, nearest), notJoined);
  }

  private static Optional<Sighting> nearest(
      Weighing weighing, List<Sighting> seen, Duration within) {
    return seen.stream()
        .filter(s -> s.held().isEmpty() && s.areaCm2().orElse(0) > 0)
        .filter(s -> apart(weighing, s).compareTo(within) <= 0)
        .min(
            Comparator.<Sighting, Duration>comparing(s -> apart(weighing, s))
                .thenComparing(s -> s.takenAt().toInstant())
                .thenComparing(Sighting::photo));
  }

  private static Duration apart(Weighing weighing, Sighting sighting) {
    return Duration.between(weighing.weighedAt(), sighting.takenAt()).abs();
  }

  private static Weighed weighed(Weighing weighing, Subject subject, Sighting sighting) {
    Traits traits =
        new Traits(
            subject.variety(),
            sighting.areaCm2(),
            weighing.topHeightMm(),
            subject.curveAreaCm2(),
            mean(sighting));
    return new Weighed(
        weighing.line(),
        weighing.raft(),
        weighing.site(),
        weighing.weighedAt(),
        weighing.freshWeightG(),
        traits,
        Regime.of(sighting.closed()),
        sighting.photo());
  }

  private static OptionalDouble mean(Sighting sighting) {
    return sighting.seen().stream().mapToDouble(Sighting.SeenHeight::meanMm).findFirst();
  }

  private static String why(Weighing weighing, Optional<Subject> subject, List<Sighting> seen) {
    String where = weighing.site() + " of " + weighing.raft();
    if (subject.isEmpty()) {
      return "no plant stood at " + where + " then; check raft, site and date, or the events";
    }
    if (subject.get().brown()) {
      return "the plant at "
          + where
          + " was brown by its photos before: what a dead plant weighs tells nothing of living"
          + " ones; strike the row, or check raft and site";
    }
    Optional<Sighting> closest = seen.stream().min(Comparator.comparing(s -> apart(weighing, s)));
    if (closest.isEmpty()) {
      return "no photo shows " + where + "; photograph a raft before its plants are weighed";
    }
    Sighting sighting = closest.get();
    double hours = apart(weighing, sighting).toMinutes() / 60.0;
    if (!sighting.held().isEmpty()) {
      return "the nearest photo, " + sighting.photo() + ", is held: " + sighting.held();
    }
    if (hours > FAR_HOURS) {
      return String.format(
          Locale.ROOT,
          "the nearest photo, %s, is %.0f days away; check the date, or photograph nearer to the"
              + " weighing",
          sighting.photo(),
          hours / 24);
    }
    return String.format(
        Locale.ROOT,
        "the nearest photo, %s, is %.1f hours away; allow more hours or photograph nearer to the"
            + " weighing",
        sighting.photo(),
        hours);
  }
}
