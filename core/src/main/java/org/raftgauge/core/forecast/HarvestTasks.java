// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.evening.Task;

/** Makes worklist rows of the rafts that are ready within the next days. */
public final class HarvestTasks {
  /** Days ahead of which a harvest is announced, as those by the calendar; a working value. */
  private static final int AHEAD_DAYS = 3;

  private HarvestTasks() {}

  /**
   * Makes the rows.
   *
   * @param forecast of the evening
   * @param book as known by the evening
   * @return a task for each raft that is ready within three days, sorted by raft
   */
  public static List<Task> of(EveningForecast forecast, CropBook book) {
    TreeMap<String, RaftForecast> rafts = new TreeMap<>();
    for (RaftForecast raft : forecast.rafts()) {
      if (raft.readyDay(0.5).orElse(Integer.MAX_VALUE) <= AHEAD_DAYS) {
        rafts.merge(raft.who().raft(), raft, HarvestTasks::sooner);
      }
    }
    List<Task> tasks = new ArrayList<>();
    rafts.forEach((id, raft) -> tasks.add(task(forecast, raft, book)));
    return tasks;
  }

  private static RaftForecast sooner(RaftForecast a, RaftForecast b) {
    return b.readyDay(0.5).orElseThrow() < a.readyDay(0.5).orElseThrow() ? b : a;
  }

  private static Task task(EveningForecast forecast, RaftForecast raft, CropBook book) {
    LocalDate evening = forecast.asked().evening();
    int ready = raft.readyDay(0.5).orElseThrow();
    LocalDate day = forecast.date(Math.max(1, ready));
    Amount weight = raft.weightG(Math.max(1, ready)).orElseThrow();
    Units units = book.units();
    String when = ready == 0 ? "ready now" : "ready on " + day;
    String why =
        String.format(
            Locale.ROOT,
            "By the forecast %s (80 %%: %s to %s), then %s %s (80 %%: %s to %s).",
            when,
            date(forecast, raft.readyDay(0.1)),
            date(forecast, raft.readyDay(0.9)),
            number(units.weight(weight.mean())),
            units.weightUnit(),
            number(units.weight(weight.lo80())),
            number(units.weight(weight.hi80())));
    String id = raft.who().raft();
    Optional<Planting> planting = book.plantingsOn(id, evening).stream().findFirst();
    Task.Where where =
        new Task.Where(
            "",
            planting.map(Planting::pond).orElse(""),
            planting.map(Planting::berth).orElse(""),
            id,
            List.of());
    String cycle = planting.map(p -> p.startsOn().toString()).orElse("none");
    return new Task(
        Task.Action.HARVEST, 2, where, why, Optional.of(day), "harvest/" + id + "/" + cycle);
  }

  /** Writes a weight; three digits are enough. */
  private static String number(double weight) {
    return String.format(
        Locale.ROOT, weight < 10 ? "%.2f" : weight < 100 ? "%.1f" : "%.0f", weight);
  }

  private static String date(EveningForecast forecast, OptionalInt day) {
    return day.isPresent()
        ? forecast.date(day.getAsInt()).toString()
        : "later than " + forecast.date(forecast.rafts().get(0).lastDay());
  }
}
