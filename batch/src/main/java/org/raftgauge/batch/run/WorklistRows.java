// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.NearestSpelling;
import org.raftgauge.core.problem.Problem;

/**
 * The rows that the worklist of an evening has, hidden ones too.
 *
 * @param evening the evening
 * @param names the rows' names; of rows about several sites also the names of each
 */
public record WorklistRows(LocalDate evening, Set<String> names) {

  /**
   * Finds the rows by judging an evening from the history.
   *
   * @param book the book's folder
   * @param farm the book
   * @param forecasts tells what is to come
   * @param asked the evening, or nothing for the latest one
   * @return its rows
   * @throws InputException if the book has no history, or no photo that shows a raft
   * @throws IOException if the history cannot be read
   */
  public static WorklistRows of(Path book, Farm farm, ForecastSource forecasts, Asked asked)
      throws InputException, IOException {
    try (History history = JudgeFolder.open(book)) {
      Measures measures = history.measures();
      Optional<LocalDate> evening = asked.evening();
      if (evening.isEmpty()) {
        evening = latest(measures, farm, asked.today());
      }
      LocalDate day =
          evening.orElseThrow(
              () ->
                  wrong("BOOK " + book, "has no photo of a raft yet", "run it over photos first"));
      JudgeHistory.Judgement judged =
          JudgeHistory.of(measures, farm, new JudgeHistory.Asked(day, Instant.MAX), forecasts);
      return new WorklistRows(day, judged.result().rowNames());
    }
  }

  /**
   * Which evening is meant.
   *
   * @param evening the evening, or nothing for the latest
   * @param today the farm's day now
   */
  public record Asked(Optional<LocalDate> evening, LocalDate today) {}

  private static Optional<LocalDate> latest(Measures measures, Farm farm, LocalDate today)
      throws IOException {
    Optional<LocalDate> day = measures.latestDay(today.plusDays(1));
    if (day.isEmpty()) {
      return day;
    }
    List<LocalDate> evenings = new ArrayList<>();
    for (Kept kept : measures.takenBetween(day.get().minusDays(1), day.get())) {
      kept.measure().takenAt().map(farm::evening).ifPresent(evenings::add);
    }
    return Optional.of(evenings.stream().max(LocalDate::compareTo).orElse(day.get()));
  }

  /**
   * Refuses names that no row has.
   *
   * @param items the names
   * @throws InputException naming the nearest row for each of them
   */
  public void check(Collection<String> items) throws InputException {
    List<Problem> problems = new ArrayList<>();
    for (String item : items) {
      if (!names.contains(item)) {
        String near =
            NearestSpelling.of(item, names).map(n -> "did you mean \"" + n + "\"? ").orElse("");
        problems.add(
            new Problem(
                "ITEM \"" + item + "\"",
                "is no row of the worklist of the evening of " + evening,
                near
                    + "copy it from the column item of worklist.csv, and name that list's evening"
                    + " with --on where it is another"));
      }
    }
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
  }

  /**
   * Refuses a day until which nothing would be hidden.
   *
   * @param until the first day on which rows may show again
   * @throws InputException if it is not after the evening
   */
  public void checkUntil(LocalDate until) throws InputException {
    if (!until.isAfter(evening)) {
      throw wrong(
          "--until " + until,
          "is not after the evening of the worklist, " + evening + ": it hides nothing",
          "give a later day, or name an earlier list's evening with --on");
    }
  }

  /**
   * Refuses names that no row of any evening can have, without looking at the history.
   *
   * @param items the names
   * @param book the book, which knows rafts, ponds and stations
   * @throws InputException naming the nearest raft, pond or station
   */
  public static void checkForm(Collection<String> items, CropBook book) throws InputException {
    Set<String> known = new TreeSet<>(book.stations().keySet());
    book.plantings().forEach(p -> known.addAll(List.of(p.raft(), p.pond())));
    for (String item : items) {
      String[] parts = item.split("/", -1);
      String copy = "copy it from the column item of worklist.csv";
      String place = "ITEM \"" + item + "\"";
      if (parts.length < 3) {
        throw wrong(place, "is not the name of a worklist row", copy);
      }
      if (!known.contains(parts[1])) {
        String near =
            NearestSpelling.of(parts[1], known).map(n -> "did you mean \"" + n + "\"? ").orElse("");
        String found =
            "speaks of \"" + parts[1] + "\", which is no raft, pond or station of the book";
        throw wrong(place, found, near + copy);
      }
    }
  }

  private static InputException wrong(String place, String found, String remedy) {
    return new InputException(List.of(new Problem(place, found, remedy)));
  }
}
