// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.batch.folder.ReadPhoto;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.measure.CheckPhoto;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * Joins the pictures of stations with two cameras: by name, where the second's differs from the
 * first's by the station's mark alone; else by time, where just one photo of the first camera was
 * taken within two seconds.
 */
public final class PairPhotos {
  /** Two cameras on one trigger, or one switch clock, agree to a second; files tell whole ones. */
  private static final Duration WITHIN = Duration.ofSeconds(2);

  private final CropBook book;
  private final List<FoundPhoto> photos;
  private final Map<String, String> stations = new HashMap<>();
  private final Map<String, FoundPhoto> seconds = new HashMap<>();
  private final Map<String, Optional<Instant>> times = new HashMap<>();
  private final List<Problem> problems;

  private PairPhotos(FoundPhotos found, CropBook book) {
    this.book = book;
    this.photos = found.photos();
    this.problems = new ArrayList<>(found.problems());
  }

  /**
   * Joins.
   *
   * @param found the photos of a folder
   * @param book the book, whose stations say which have two cameras
   * @return the same photos, those of first cameras with the second's file; with a warning for each
   *     picture of a second camera that found no partner
   */
  public static FoundPhotos join(FoundPhotos found, CropBook book) {
    boolean any = book.stations().values().stream().anyMatch(s -> s.second().isPresent());
    return any ? new PairPhotos(found, book).join() : found;
  }

  private FoundPhotos join() {
    List<FoundPhoto> firsts = new ArrayList<>();
    List<FoundPhoto> others = new ArrayList<>();
    for (FoundPhoto photo : photos) {
      Optional<Station> station =
          MeasurePhoto.stationOf(book, photo.facts()).filter(s -> s.second().isPresent());
      station.ifPresent(s -> stations.put(name(photo), s.name()));
      station.ifPresent(s -> (s.tookWithSecond(name(photo)) ? others : firsts).add(photo));
    }
    List<FoundPhoto> left = byName(firsts, others);
    left.forEach(second -> byTime(firsts, second));
    return new FoundPhotos(
        photos.stream().map(p -> with(p, Optional.ofNullable(seconds.get(name(p))))).toList(),
        problems);
  }

  private static FoundPhoto with(FoundPhoto photo, Optional<FoundPhoto> second) {
    return second.map(s -> photo.with(s.file())).orElse(photo);
  }

  private static String name(FoundPhoto photo) {
    return photo.facts().photo();
  }

  /** Joins by name; returns the pictures that found no partner. */
  private List<FoundPhoto> byName(List<FoundPhoto> firsts, List<FoundPhoto> others) {
    Map<String, FoundPhoto> byStem = new HashMap<>();
    firsts.forEach(p -> byStem.put(stations.get(name(p)) + "|" + SecondCamera.stem(name(p)), p));
    List<FoundPhoto> left = new ArrayList<>();
    for (FoundPhoto other : others) {
      String station = stations.get(name(other));
      SecondCamera camera = book.station(station).orElseThrow().second().orElseThrow();
      FoundPhoto first = byStem.get(station + "|" + camera.firstName(name(other)));
      if (first == null || seconds.putIfAbsent(name(first), other) != null) {
        left.add(other);
      }
    }
    return left;
  }

  private void byTime(List<FoundPhoto> firsts, FoundPhoto second) {
    Optional<Instant> at = time(second);
    Set<String> near = new HashSet<>();
    for (FoundPhoto first : firsts) {
      boolean free = !seconds.containsKey(name(first));
      if (at.isPresent() && free && stations.get(name(first)).equals(stations.get(name(second)))) {
        time(first)
            .filter(t -> Duration.between(t, at.get()).abs().compareTo(WITHIN) <= 0)
            .ifPresent(t -> near.add(name(first)));
      }
    }
    if (near.size() == 1) {
      seconds.put(near.iterator().next(), second);
    } else {
      problems.add(
          Problem.warning(
              name(second),
              near.isEmpty()
                  ? "no photo of the station's first camera goes with it, by name or within 2 s"
                  : "several photos of the station's first camera were taken within 2 s of it",
              "name both alike but for file_mark, or set both cameras' clocks"));
    }
  }

  private Optional<Instant> time(FoundPhoto photo) {
    return times.computeIfAbsent(name(photo), n -> timeOf(photo.file(), photo));
  }

  private Optional<Instant> timeOf(Path file, FoundPhoto photo) {
    try {
      byte[] bytes = ReadPhoto.bytes(file, name(photo));
      return CheckPhoto.takenAt(bytes, photo.facts(), book).map(t -> t.toInstant());
    } catch (InputException unreadable) {
      return Optional.empty();
    }
  }
}
