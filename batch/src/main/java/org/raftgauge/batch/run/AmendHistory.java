// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.raftgauge.batch.store.BookLock;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * Enters corrections into a book's history. Nothing that was measured is changed or taken away:
 * what reads the history obeys those corrections that hold.
 */
public final class AmendHistory {
  private final Request request;
  private final Farm farm;

  /**
   * What is common to all corrections.
   *
   * @param book the book's folder
   * @param entry who, when and why
   * @param patience how long to wait while a run uses the book
   * @param waiting told who holds the book, while it waits
   */
  public record Request(
      Path book, Correction.Entry entry, Duration patience, Consumer<String> waiting) {}

  /**
   * Prepares.
   *
   * @param request who, when and why
   * @param farm the book, which knows the rafts
   */
  public AmendHistory(Request request, Farm farm) {
    this.request = request;
    this.farm = farm;
  }

  /**
   * Lets photos count no more.
   *
   * @param names their paths, folders or first digits of their hashes, see {@link NamedPhotos}
   * @return the corrections as entered
   * @throws InputException if one is not known or excluded already; nothing is entered then
   * @throws IOException if the history cannot be written
   */
  public List<Correction> exclude(List<String> names) throws InputException, IOException {
    return enter(
        (history, holding) -> {
          List<Correction.Change> changes = new ArrayList<>();
          for (Kept photo : NamedPhotos.of(history, names)) {
            refuseTwice(holding, photo, Correction.Exclude.class);
            changes.add(new Correction.Exclude(of(photo)));
          }
          return changes;
        });
  }

  /**
   * Says that photos show another raft.
   *
   * @param names of the photos
   * @param from the raft as measured; may be absent where a photo shows one raft
   * @param to the raft it is
   * @return the corrections as entered
   * @throws InputException if that cannot be; nothing is entered then
   * @throws IOException if the history cannot be written
   */
  public List<Correction> move(List<String> names, Optional<String> from, String to)
      throws InputException, IOException {
    return enter(
        (history, holding) -> {
          List<Correction.Change> changes = new ArrayList<>();
          for (Kept photo : NamedPhotos.of(history, names)) {
            refuseTwice(holding, photo, Correction.Move.class);
            String raft = new CheckMove(farm, photo.measure()).from(from, to);
            changes.add(new Correction.Move(of(photo), raft, to));
          }
          return changes;
        });
  }

  /**
   * Says that photos were taken at another time.
   *
   * @param names of the photos
   * @param shift is added to their times
   * @return the corrections as entered
   * @throws InputException if one is not known, has no time or is shifted already
   * @throws IOException if the history cannot be written
   */
  public List<Correction> clock(List<String> names, Duration shift)
      throws InputException, IOException {
    return enter(
        (history, holding) -> {
          List<Correction.Change> changes = new ArrayList<>();
          for (Kept photo : NamedPhotos.of(history, names)) {
            refuseTwice(holding, photo, Correction.Clock.class);
            if (photo.measure().takenAt().isEmpty()) {
              throw wrong(
                  photo.measure().photo(),
                  "has no time that could be shifted",
                  "give its time in manifest.csv and run again");
            }
            changes.add(new Correction.Clock(of(photo), shift));
          }
          return changes;
        });
  }

  /**
   * Undoes corrections.
   *
   * @param numbers their numbers
   * @return the corrections as entered
   * @throws InputException if one is not there or undone already
   * @throws IOException if the history cannot be written
   */
  public List<Correction> undo(List<Integer> numbers) throws InputException, IOException {
    return enter(
        (history, holding) -> {
          Set<Integer> standing = Corrections.standing(history.corrections());
          List<Correction.Change> changes = new ArrayList<>();
          for (int number : numbers) {
            if (!standing.contains(number)) {
              throw new InputException(
                  List.of(
                      new Problem(
                          "NUMBER " + number,
                          "is no correction that holds",
                          "see \"raftgauge amend list\"")));
            }
            changes.add(new Correction.Undo(number));
          }
          return changes;
        });
  }

  @SuppressWarnings("try") // the lock is held, not used
  private List<Correction> enter(Plan plan) throws InputException, IOException {
    try (BookLock lock = BookLock.take(request.book(), request.patience(), request.waiting());
        History history = JudgeFolder.open(request.book())) {
      Corrections holding = Corrections.of(history.corrections(), Instant.MAX);
      return history.correct(
          plan.of(history, holding).stream()
              .map(change -> new Correction(0, request.entry(), change))
              .toList());
    }
  }

  private static void refuseTwice(
      Corrections holding, Kept photo, Class<? extends Correction.Change> kind)
      throws InputException {
    for (Correction each : holding.of(Set.of(photo.measure().sha256()))) {
      if (kind.isInstance(each.change())) {
        throw wrong(
            photo.measure().photo(),
            "is corrected so already: " + each.words(),
            "undo that first: raftgauge amend undo " + each.number());
      }
    }
  }

  private static Correction.Photo of(Kept kept) {
    return new Correction.Photo(kept.measure().sha256(), kept.measure().photo());
  }

  static InputException wrong(String photo, String found, String remedy) {
    return new InputException(List.of(new Problem("PHOTO \"" + photo + "\"", found, remedy)));
  }

  private interface Plan {
    List<Correction.Change> of(History history, Corrections holding)
        throws InputException, IOException;
  }
}
