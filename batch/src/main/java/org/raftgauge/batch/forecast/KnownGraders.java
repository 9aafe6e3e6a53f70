// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.forecast;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.raftgauge.batch.grade.BookGraders;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.forecast.EveningForecast;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * The graders of the crops of a book, and why a crop has none.
 *
 * @param graders by crop
 * @param problems of graders that cannot be read, by crop
 */
record KnownGraders(Map<String, Grader> graders, Map<String, List<Problem>> problems) {

  /** Reads the graders of all crops that are planted, whenever they were fitted. */
  static KnownGraders of(CropBook book, Path folder) {
    Map<String, Grader> graders = new TreeMap<>();
    Map<String, List<Problem>> problems = new TreeMap<>();
    for (String crop : book.plantings().stream().map(Planting::crop).distinct().toList()) {
      try {
        BookGraders.of(book, folder, crop).ifPresent(g -> graders.put(crop, g));
      } catch (InputException e) {
        problems.put(crop, e.problems());
      }
    }
    return new KnownGraders(graders, problems);
  }

  /** Returns itself if all could be read. */
  KnownGraders orFail() throws InputException {
    List<Problem> all = problems.values().stream().flatMap(List::stream).toList();
    if (!all.isEmpty()) {
      throw new InputException(all);
    }
    return this;
  }

  /** Returns those that were fitted, on weighings taken, by the end of an evening. */
  Map<String, Grader> by(CropBook book, LocalDate evening) {
    Map<String, Grader> known = new TreeMap<>(graders);
    known.values().removeIf(g -> later(g, book, evening));
    return known;
  }

  /**
   * Says which crops have no weights on an evening though there is a file, and why; then what the
   * forecast remarks, but for asking to fit a grader that is there.
   */
  List<String> remarks(CropBook book, EveningForecast forecast) {
    LocalDate evening = forecast.asked().evening();
    List<String> remarks = new ArrayList<>(unused(book, evening));
    forecast.remarks().stream().filter(r -> !saysNoneOfOurs(r)).forEach(remarks::add);
    return remarks;
  }

  private boolean saysNoneOfOurs(String remark) {
    return Stream.concat(graders.keySet().stream(), problems.keySet().stream())
        .anyMatch(crop -> EveningForecast.noGrader(crop).equals(remark));
  }

  private List<String> unused(CropBook book, LocalDate evening) {
    List<String> remarks = new ArrayList<>();
    problems.forEach(
        (crop, why) -> why.forEach(p -> remarks.add("no weights of " + crop + ": " + p)));
    graders.values().stream()
        .filter(g -> later(g, book, evening))
        .map(g -> left(g, evening) + from(g, book))
        .forEach(remarks::add);
    return remarks;
  }

  private static boolean later(Grader grader, CropBook book, LocalDate evening) {
    Instant end = book.farmDay().start(evening.plusDays(1));
    return !grader.origin().knownBefore(end);
  }

  private static String left(Grader grader, LocalDate evening) {
    return "no weights of "
        + grader.crop()
        + ": its grader knows more than the evening of "
        + evening
        + " (fitted at "
        + grader.origin().fittedAt()
        + ", last weighing "
        + grader.origin().lastWeighed()
        + ") and is left out";
  }

  /** Says from which evening on a grader is used. */
  private static String from(Grader grader, CropBook book) {
    try {
      return Stream.of(grader.origin().fittedAt(), grader.origin().lastWeighed())
          .map(at -> book.farmDay().evening(OffsetDateTime.parse(at).toInstant()))
          .max(LocalDate::compareTo)
          .map(day -> "; it tells weights from the evening of " + day + " on")
          .orElse("");
    } catch (DateTimeParseException notATime) {
      return "; fit it again with raftgauge grader fit, for its times cannot be read";
    }
  }
}
