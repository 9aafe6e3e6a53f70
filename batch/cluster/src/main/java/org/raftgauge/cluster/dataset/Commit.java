// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.dataset;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a dataset holds from a moment on: one small file, which is there or not.
 *
 * @param number 0 for a dataset that holds nothing yet
 * @param run the run that made it, or empty
 * @param startedAt when that run was asked for, ISO 8601, or empty
 * @param version of the program
 * @param rounds folders of measures below {@code measures}, in the order in which they were made
 * @param tables the run whose folder below {@code tables} holds the reports; empty where none does
 * @param reports which reports that run made
 */
public record Commit(
    int number,
    String run,
    String startedAt,
    String version,
    List<Round> rounds,
    String tables,
    Reports reports) {

  /** The dataset that holds nothing yet. */
  public static final Commit NONE =
      new Commit(0, "", "", "", List.of(), "", new Reports(List.of(), List.of()));

  /** Copies the list. */
  public Commit {
    rounds = List.copyOf(rounds);
  }

  /**
   * Measures of some photos.
   *
   * @param folder below {@code measures}
   * @param version of the program
   * @param code hash of its measuring code
   */
  public record Round(String folder, String version, String code) {}

  /**
   * Reports of a run, some of which may have no rows.
   *
   * @param names such as {@code sites}
   * @param evenings that were judged, ISO 8601, in order
   */
  public record Reports(List<String> names, List<String> evenings) {

    /** Copies the lists. */
    public Reports {
      names = List.copyOf(names);
      evenings = List.copyOf(evenings);
    }
  }

  /** Returns the rounds that a program measured, by their places in the list. */
  public Map<Integer, String> roundsOf(String code) {
    Map<Integer, String> of = new TreeMap<>();
    for (int i = 0; i < rounds.size(); i++) {
      if (rounds.get(i).code().equals(code)) {
        of.put(i, rounds.get(i).folder());
      }
    }
    return of;
  }

  /** Returns the next commit, with a round more. */
  Commit with(RunStamp stamp, Round round) {
    List<Round> more = new ArrayList<>(rounds);
    more.add(round);
    return new Commit(
        number + 1, stamp.run(), stamp.startedAt(), stamp.version(), more, tables, reports);
  }

  /** Returns the next commit, with a run's reports. */
  Commit with(RunStamp stamp, Reports made) {
    return new Commit(
        number + 1, stamp.run(), stamp.startedAt(), stamp.version(), rounds, stamp.run(), made);
  }
}
