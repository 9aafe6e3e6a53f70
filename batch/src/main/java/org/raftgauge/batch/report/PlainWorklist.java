// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.track.Judged;

/**
 * Lists tomorrow's work as far as one run tells it: rafts that were not photographed, photos to
 * take again, and what departs on the latest evening of each raft.
 */
final class PlainWorklist {
  private final ReportInput input;
  private final List<Task> tasks = new ArrayList<>();

  private PlainWorklist(ReportInput input) {
    this.input = input;
  }

  /**
   * Lists.
   *
   * @param input a run with its verdicts
   * @return its worklist, most urgent first
   */
  static List<Task> of(ReportInput input) {
    PlainWorklist list = new PlainWorklist(input);
    input.run().summary().evening().ifPresent(list::notPhotographed);
    input.run().photos().forEach(list::photographAgain);
    list.departures();
    return list.tasks;
  }

  private void notPhotographed(LocalDate evening) {
    for (String raft : input.run().summary().notPhotographed()) {
      Optional<Planting> planting = input.book().plantingsOn(raft, evening).stream().findFirst();
      Task.Place place =
          new Task.Place(
              "",
              planting.map(Planting::pond).orElse(""),
              planting.map(Planting::berth).orElse(""),
              raft,
              "");
      tasks.add(
          new Task(
              1,
              "photograph",
              place,
              "it was expected this evening, and no photo shows it",
              Texts.day(evening.plusDays(1)),
              ""));
    }
  }

  private void photographAgain(PhotoMeasure photo) {
    if (photo.status() == PhotoStatus.HELD || photo.status() == PhotoStatus.REFUSED) {
      Task.Place place = new Task.Place(photo.station(), "", "", "", "");
      String remedy = photo.remedy().isEmpty() ? "" : "; " + photo.remedy();
      tasks.add(
          new Task(
              2,
              "photograph again",
              place,
              photo.photo() + ": " + photo.reason() + remedy,
              "",
              ""));
    }
  }

  /** Adds what departs: of each pond, raft and site the latest row. */
  private void departures() {
    TreeMap<String, Judged> latest = new TreeMap<>();
    input.verdicts().values().stream()
        .flatMap(List::stream)
        .forEach(
            row ->
                latest.put(
                    row.scope()
                        + "\n"
                        + row.place().station()
                        + row.place().pond()
                        + "\n"
                        + row.place().raft()
                        + "\n"
                        + row.place().site(),
                    row));
    latest.values().stream()
        .filter(row -> Mark.of(row.verdict()).toLookAt())
        .sorted(
            Comparator.comparing(Judged::scope)
                .thenComparing(row -> -Mark.of(row.verdict()).weight())
                .thenComparing(Judged.ORDER))
        .forEach(row -> tasks.add(task(row)));
  }

  private Task task(Judged row) {
    String site = row.place().site().map(Object::toString).orElse("");
    Task.Place place =
        new Task.Place(row.place().station(), row.place().pond(), "", row.place().raft(), site);
    String why = Mark.of(row.verdict()).word() + ": " + row.evidence();
    return new Task(priority(row.scope()), "inspect", place, why, "", "");
  }

  private static int priority(Judged.Scope scope) {
    return switch (scope) {
      case STATION -> 3;
      case POND -> 4;
      case RAFT -> 5;
      case SITE -> 6;
    };
  }
}
