// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;

/** The corrections that hold: those that were entered by some time and not undone by then. */
public final class Corrections {
  private final List<Correction> all;
  private final Map<String, List<Correction>> byPhoto = new LinkedHashMap<>();

  private Corrections(List<Correction> all) {
    this.all = all;
    for (Correction each : all) {
      photo(each.change())
          .ifPresent(p -> byPhoto.computeIfAbsent(p.sha256(), k -> new ArrayList<>()).add(each));
    }
  }

  /**
   * Picks those that hold.
   *
   * @param entered every correction, in the order of their numbers
   * @param by what was entered at this moment or later is not looked at
   * @return those that hold
   */
  public static Corrections of(List<Correction> entered, Instant by) {
    List<Correction> known =
        entered.stream().filter(c -> c.entry().at().toInstant().isBefore(by)).toList();
    Set<Integer> standing = standing(known);
    return new Corrections(
        known.stream()
            .filter(c -> standing.contains(c.number()))
            .filter(c -> !(c.change() instanceof Correction.Undo))
            .toList());
  }

  /**
   * Returns the numbers of those that hold, undoings too.
   *
   * @param entered in the order of their numbers
   */
  public static Set<Integer> standing(List<Correction> entered) {
    Set<Integer> standing = new TreeSet<>(entered.stream().map(Correction::number).toList());
    for (int i = entered.size() - 1; i >= 0; i--) {
      Correction each = entered.get(i);
      if (each.change() instanceof Correction.Undo undo && standing.contains(each.number())) {
        standing.remove(undo.number());
      }
    }
    return standing;
  }

  /** Returns those that hold, in the order of their numbers. */
  public List<Correction> all() {
    return all;
  }

  /** Returns the hashes of the photos that are corrected. */
  public Set<String> photos() {
    return byPhoto.keySet();
  }

  /** Says whether a photo counts no more. */
  public boolean excludes(String sha256) {
    return byPhoto.getOrDefault(sha256, List.of()).stream()
        .anyMatch(c -> c.change() instanceof Correction.Exclude);
  }

  /** Returns what is added to a photo's time. */
  Duration shiftOf(String sha256) {
    return byPhoto.getOrDefault(sha256, List.of()).stream()
        .filter(c -> c.change() instanceof Correction.Clock)
        .map(c -> ((Correction.Clock) c.change()).shift())
        .reduce(Duration.ZERO, Duration::plus);
  }

  /** Returns those that correct one of some photos. */
  public List<Correction> of(Set<String> sha256) {
    return all.stream()
        .filter(c -> photo(c.change()).filter(p -> sha256.contains(p.sha256())).isPresent())
        .toList();
  }

  /**
   * Corrects a photo.
   *
   * @param photo as measured
   * @return the photo as it is to count; skipped, with the reason, where it is excluded
   */
  public PhotoMeasure apply(PhotoMeasure photo) {
    PhotoMeasure corrected = photo;
    for (Correction each : byPhoto.getOrDefault(photo.sha256(), List.of())) {
      if (each.change() instanceof Correction.Exclude) {
        corrected = excluded(corrected, each);
      } else if (each.change() instanceof Correction.Move move) {
        corrected = moved(corrected, move, each);
      } else if (each.change() instanceof Correction.Clock clock) {
        corrected = shifted(corrected, clock.shift(), each);
      }
    }
    return corrected;
  }

  private static PhotoMeasure excluded(PhotoMeasure photo, Correction why) {
    return photo.withSay(
        PhotoStatus.SKIPPED,
        why.words(),
        "to take that back: raftgauge amend undo " + why.number());
  }

  private static PhotoMeasure moved(PhotoMeasure photo, Correction.Move move, Correction why) {
    List<RaftMeasure> rafts =
        photo.rafts().stream()
            .map(
                raft ->
                    raft.raft().orElse("").equals(move.raft())
                        ? raft.named(move.toRaft(), why.words())
                        : raft)
            .toList();
    return photo.withRafts(rafts);
  }

  private static PhotoMeasure shifted(PhotoMeasure photo, Duration shift, Correction why) {
    List<RaftMeasure> rafts = photo.rafts().stream().map(raft -> raft.noted(why.words())).toList();
    Optional<OffsetDateTime> taken = photo.takenAt().map(at -> at.plus(shift));
    return photo.withRafts(rafts).taken(taken, "");
  }

  private static Optional<Correction.Photo> photo(Correction.Change change) {
    if (change instanceof Correction.Exclude exclude) {
      return Optional.of(exclude.photo());
    }
    if (change instanceof Correction.Move move) {
      return Optional.of(move.photo());
    }
    return change instanceof Correction.Clock clock ? Optional.of(clock.photo()) : Optional.empty();
  }
}
