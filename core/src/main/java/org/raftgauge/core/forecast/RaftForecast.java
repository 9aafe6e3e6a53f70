// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.raftgauge.core.book.Harvest;

/** A raft's coming days; of a raft with two crops or lots, one of them. Never changes. */
public final class RaftForecast {
  private final Who who;
  private final List<Day> days;
  private final int[] readyDay;

  /**
   * Whose forecast.
   *
   * @param raft the raft
   * @param pond its pond, may be empty
   * @param crop its crop
   * @param variety its variety, may be empty; of several the first
   * @param lot its lot, may be empty
   * @param ageDays of its plants on the evening: days after transplant or after the last cut
   * @param harvest the crop's targets, where the book gives them
   * @param grader name of the grader; {@code none} where there is none
   * @param cutBeforeG weighed at earlier cuts of the same planting, g
   */
  public record Who(
      String raft,
      String pond,
      String crop,
      String variety,
      String lot,
      double ageDays,
      Optional<Harvest> harvest,
      String grader,
      double cutBeforeG) {}

  /**
   * A day.
   *
   * @param heads expected to stand
   * @param headsUnder expected under the crop's minimum; absent without weights or targets
   * @param weight total fresh weight, g, draw by draw; absent where it cannot be told
   * @param spread how the heads are spread; empty where weights cannot be told
   * @param areaCm2 total projected area by the plants' curves, each whole as if none were covered
   * @param regime {@code open}, {@code closed} or {@code mixed}
   * @param warnings what a reader must know, in words
   */
  record Day(
      double heads,
      Optional<Double> headsUnder,
      Optional<Totals> weight,
      HeadSpread spread,
      Amount areaCm2,
      String regime,
      List<String> warnings) {
    Day {
      warnings = List.copyOf(warnings);
    }
  }

  RaftForecast(Who who, List<Day> days, int[] readyDay) {
    this.who = who;
    this.days = List.copyOf(days);
    this.readyDay = readyDay.clone();
  }

  /** Returns the last day that is forecast, from the evening. */
  public int lastDay() {
    return days.size() - 1;
  }

  /** Returns whose forecast it is. */
  public Who who() {
    return who;
  }

  Day day(int day) {
    return days.get(day);
  }

  /**
   * Returns the total weight on a day.
   *
   * @param day from the evening, 0 to the horizon
   * @return g, where it can be told
   */
  public Optional<Amount> weightG(int day) {
    return days.get(day).weight().map(Totals::amount);
  }

  /**
   * Returns how the heads' weights are spread on a day.
   *
   * @param day from the evening, 0 to the horizon
   * @return empty where weights cannot be told
   */
  public HeadSpread headSpread(int day) {
    return days.get(day).spread();
  }

  /**
   * Returns the total projected area on a day by the plants' curves, each whole as if none were
   * covered.
   *
   * @param day from the evening, 0 to the horizon
   * @return cm2
   */
  public Amount areaCm2(int day) {
    return days.get(day).areaCm2();
  }

  /**
   * Returns what a reader must know of a day, without how many heads it holds for.
   *
   * @param day from the evening, 0 to the horizon
   * @return in words
   */
  public List<String> generalWarnings(int day) {
    return days.get(day).warnings().stream().map(RaftForecast::general).toList();
  }

  /** Takes the count of heads off a warning, so that those of rafts can be counted together. */
  static String general(String warning) {
    return warning.replaceFirst("^\\d+ of \\d+ heads ", "heads ");
  }

  /**
   * Returns the heads expected to stand on a day.
   *
   * @param day from the evening
   */
  public double heads(int day) {
    return days.get(day).heads();
  }

  /** Says whether the raft is ready on or before a day in a draw. */
  boolean readyBy(int day, int draw) {
    return readyDay.length > 0 && readyDay[draw] <= day;
  }

  /**
   * Returns the day, from the evening, by which it is ready with a probability.
   *
   * @param probability such as 0.5, or 0.1 and 0.9 for the 80 % interval
   * @return nothing where that lies past the horizon, or weights or targets are missing
   */
  public OptionalInt readyDay(double probability) {
    if (readyDay.length == 0) {
      return OptionalInt.empty();
    }
    int[] sorted = readyDay.clone();
    Arrays.sort(sorted);
    int day = sorted[Math.min(sorted.length - 1, (int) Math.floor(probability * sorted.length))];
    return day > lastDay() ? OptionalInt.empty() : OptionalInt.of(day);
  }
}
