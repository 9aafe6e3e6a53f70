// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;

/**
 * A row of the worklist, as in {@code worklist.csv}.
 *
 * @param priority 1 is most urgent
 * @param action what to do, such as {@code inspect} or {@code photograph again}
 * @param place where
 * @param why the reason, a clause or sentences
 * @param by until when, where that is not the day that it stands under, ready to be read, or empty
 * @param item its id, by which it is marked seen; may be empty
 */
public record Task(int priority, String action, Place place, String why, String by, String item) {

  /**
   * Where something is to be done; what does not apply is empty.
   *
   * @param station the station
   * @param pond the pond
   * @param berth the berth
   * @param raft the raft
   * @param site the site or sites
   */
  public record Place(String station, String pond, String berth, String raft, String site) {

    /** Returns the place in words without the raft, such as {@code pond N, berth 4}. */
    public String around() {
      String berthText = berth.isEmpty() ? "" : ", berth " + berth;
      return pond.isEmpty() ? "" : "pond " + pond + berthText;
    }
  }

  /** Returns a task of an evening, ready to be read under the day on which it is due. */
  static Task of(org.raftgauge.core.evening.Task task, Optional<LocalDate> due) {
    var where = task.where();
    String sites = where.sites().stream().map(SiteId::toString).collect(Collectors.joining(", "));
    return new Task(
        task.priority(),
        task.action().words(),
        new Place(where.station(), where.pond(), where.berth(), where.raft(), sites),
        Texts.days(task.why()),
        task.by()
            .filter(d -> !due.equals(Optional.of(d)))
            .map(d -> "was due " + Texts.day(d))
            .orElse(""),
        task.item());
  }

  /** Returns the action with a capital letter. */
  public String lead() {
    if (action.equals("photograph at all")) {
      return "Photograph";
    }
    if (action.equals("mend the book")) {
      return "Mend the book for";
    }
    return action.isEmpty() ? "" : Character.toUpperCase(action.charAt(0)) + action.substring(1);
  }

  /** Returns when its raft was last seen, in words, where the reason says it. */
  public String lastSeen() {
    String told = why.replace("Expected, not seen. ", "");
    return told.equals(why) || told.isEmpty()
        ? ""
        : Character.toLowerCase(told.charAt(0)) + told.substring(1).replaceFirst("\\.$", "");
  }

  /** Returns the anchor of its raft on the page. */
  public String anchor() {
    return Texts.anchor(place.raft());
  }
}
