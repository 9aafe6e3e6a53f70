// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.batch.folder.ReadPhoto;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.FoundPhoto;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.run.KnownRafts;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.measure.CheckPhoto;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;

/**
 * Leaves out photos that are not asked for. What cannot be told before a photo is measured leaves
 * none out: too many photos are better than a raft missed.
 *
 * @param since the first evening wanted
 * @param to the last evening wanted
 * @param rafts the rafts wanted; all where empty
 */
record ChoosePhotos(Optional<LocalDate> since, Optional<LocalDate> to, Set<String> rafts) {

  /** Copies the set. */
  ChoosePhotos {
    rafts = Set.copyOf(rafts);
  }

  boolean all() {
    return since.isEmpty() && to.isEmpty() && rafts.isEmpty();
  }

  /** Refuses rafts that the book does not know, and days the wrong way round. */
  void check(Farm farm) throws InputException {
    if (since.isPresent() && to.isPresent() && since.get().isAfter(to.get())) {
      throw new InputException(
          List.of(
              new Problem(
                  "--since " + since.get(),
                  "is after --to " + to.get(),
                  "give the first day with --since, the last with --to")));
    }
    Set<String> known =
        farm.book().plantings().stream().map(Planting::raft).collect(Collectors.toSet());
    for (String raft : rafts) {
      if (!known.contains(raft)) {
        String guess =
            NearestSpelling.of(raft, known).map(n -> "did you mean \"" + n + "\"? ").orElse("");
        throw new InputException(
            List.of(
                new Problem(
                    "--raft " + raft,
                    "no planting of the book is on such a raft",
                    guess + "write its id as in plantings.csv")));
      }
    }
  }

  /**
   * Chooses.
   *
   * @param found all photos of the folder
   * @param farm the book
   * @param book the book's folder
   * @return those wanted, with a note on how many were left out
   */
  FoundPhotos of(FoundPhotos found, Farm farm, Path book) throws InputException, IOException {
    if (all()) {
      return found;
    }
    List<FoundPhoto> wanted = new ArrayList<>();
    try (KnownRafts known = KnownRafts.open(book)) {
      for (FoundPhoto photo : found.photos()) {
        if (wanted(photo, farm, known)) {
          wanted.add(photo);
        }
      }
    }
    List<Problem> notes = new ArrayList<>(found.problems());
    int out = found.photos().size() - wanted.size();
    notes.add(
        Problem.warning(
            "PHOTOS",
            out + " of " + found.photos().size() + " photos were left out, as asked",
            "run without " + options() + " to have them all"));
    return new FoundPhotos(wanted, notes);
  }

  private String options() {
    List<String> options = new ArrayList<>();
    since.ifPresent(day -> options.add("--since " + day));
    to.ifPresent(day -> options.add("--to " + day));
    rafts.stream().sorted().forEach(raft -> options.add("--raft " + raft));
    return String.join(" ", options);
  }

  private boolean wanted(FoundPhoto photo, Farm farm, KnownRafts known) throws IOException {
    byte[] bytes;
    try {
      bytes = ReadPhoto.bytes(photo.file(), photo.facts().photo());
    } catch (InputException unreadable) {
      return true;
    }
    Optional<LocalDate> evening =
        CheckPhoto.takenAt(bytes, photo.facts(), farm.book()).map(farm::evening);
    if (evening.isPresent()
        && (since.filter(evening.get()::isBefore).isPresent()
            || to.filter(evening.get()::isAfter).isPresent())) {
      return false;
    }
    return rafts.isEmpty() || shows(photo, bytes, farm, known);
  }

  private boolean shows(FoundPhoto photo, byte[] bytes, Farm farm, KnownRafts known)
      throws IOException {
    Set<String> shown = known.on(bytes);
    if (!shown.isEmpty()) {
      return shown.stream().anyMatch(rafts::contains);
    }
    return photo
        .facts()
        .raft()
        .or(() -> MeasurePhoto.raftOfName(farm.book(), photo.facts().photo()))
        .map(rafts::contains)
        .orElse(true);
  }
}
