// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PhotoName;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.photo.CaptureTime;
import org.raftgauge.core.photo.FarmClock;
import org.raftgauge.core.photo.NoTime;
import org.raftgauge.core.photo.PeekPhoto;
import org.raftgauge.core.photo.PeekResult;
import org.raftgauge.core.photo.PeekedPhoto;
import org.raftgauge.core.photo.TakenAt;
import org.raftgauge.core.photo.TimeClues;
import org.raftgauge.core.photo.TimeResult;
import org.raftgauge.core.photo.UnreadablePhoto;
import org.raftgauge.core.plane.FindBoards;
import org.raftgauge.core.problem.Problem;

/** Finds what can be known to be wrong with a photo before anything is measured. */
public final class CheckPhoto {

  private CheckPhoto() {}

  /**
   * Checks a photo by its headers: whether it can be read, which station took it, whether it has
   * that station's shape, and when it was taken.
   *
   * @param bytes of the photo's file
   * @param facts what else is known of it
   * @param book the crop book
   * @param now the time, so that a clock that is ahead of it is doubted
   * @return every problem, with the photo's path as its place; a doubted clock is a warning
   */
  public static List<Problem> problems(byte[] bytes, PhotoFacts facts, CropBook book, Instant now) {
    PeekResult peeked = PeekPhoto.at(bytes);
    if (peeked instanceof UnreadablePhoto bad) {
      return List.of(new Problem(facts.photo(), bad.reason(), bad.remedy()));
    }
    PeekedPhoto photo = (PeekedPhoto) peeked;
    PhotoName name = FactsOfName.of(book, facts.photo());
    StationOf.Answer answer = StationOf.photo(book, facts, name);
    if (answer.station().filter(s -> s.tookWithSecond(facts.photo())).isPresent()) {
      return List.of(); // measured with the first camera's photo, whose time and shape count
    }
    List<Problem> problems = new ArrayList<>();
    if (answer.station().isEmpty() && facts.station().isEmpty()) {
      problems.add(new Problem(facts.photo(), answer.reason(), answer.remedy()));
    }
    answer.station().flatMap(station -> shape(photo, facts, station)).ifPresent(problems::add);
    time(photo, facts, name, new FarmClock(book.farmDay(), offset(answer), Optional.of(now)))
        .ifPresent(problems::add);
    return problems;
  }

  /**
   * Says whether the manifest or its name tells a raft or a station of the book, as the name of a
   * copy does not.
   *
   * @param facts what is known of a photo besides its bytes
   * @param book the crop book
   */
  public static boolean isPlaced(PhotoFacts facts, CropBook book) {
    return facts.raft().isPresent()
        || facts.station().isPresent()
        || FactsOfName.tellsPlace(book, facts.photo());
  }

  /**
   * Tells when a photo was taken, from its headers, its name and what else is known of it, as
   * measuring it would.
   *
   * @param bytes of the photo's file
   * @param facts what else is known of it
   * @param book the crop book
   * @return nothing where nothing tells it, or the file cannot be read
   */
  public static Optional<OffsetDateTime> takenAt(byte[] bytes, PhotoFacts facts, CropBook book) {
    if (!(PeekPhoto.at(bytes) instanceof PeekedPhoto photo)) {
      return Optional.empty();
    }
    PhotoName name = FactsOfName.of(book, facts.photo());
    StationOf.Answer answer = StationOf.photo(book, facts, name);
    TimeResult time =
        CaptureTime.of(
            new TimeClues(facts.takenAt(), photo.tags(), name),
            new FarmClock(book.farmDay(), offset(answer), Optional.empty()));
    return time instanceof TakenAt taken ? Optional.of(taken.at()) : Optional.empty();
  }

  private static java.time.Duration offset(StationOf.Answer answer) {
    return answer.station().map(Station::clockOffset).orElse(java.time.Duration.ZERO);
  }

  private static Optional<Problem> shape(PeekedPhoto photo, PhotoFacts facts, Station station) {
    if (FindBoards.hasShapeOf(station, photo.widthPx(), photo.heightPx())) {
      return Optional.empty();
    }
    String found =
        String.format(
            Locale.ROOT,
            "the photo is %d x %d px, station %s takes %d x %d: not the same shape",
            photo.widthPx(),
            photo.heightPx(),
            station.name(),
            station.imageWidthPx(),
            station.imageHeightPx());
    return Optional.of(
        new Problem(
            facts.photo(),
            found,
            "use the station's own camera, uncropped, or name the photo's station"));
  }

  private static Optional<Problem> time(
      PeekedPhoto photo, PhotoFacts facts, PhotoName name, FarmClock clock) {
    TimeResult time = CaptureTime.of(new TimeClues(facts.takenAt(), photo.tags(), name), clock);
    if (time instanceof NoTime none) {
      // A time of the manifest that cannot be read is the manifest's problem already.
      return facts.takenAt().isPresent()
          ? Optional.empty()
          : Optional.of(new Problem(facts.photo(), none.reason(), none.remedy()));
    }
    return Optional.of(((TakenAt) time).clockDoubt())
        .filter(doubt -> !doubt.isEmpty())
        .map(
            doubt ->
                Problem.warning(
                    facts.photo(),
                    "its time is in doubt: " + doubt,
                    "set the camera's clock, mend the file's name, or give taken_at in manifest.csv"));
  }
}
