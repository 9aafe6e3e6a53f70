// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.WalkingOrder;

/**
 * Something for a person to do.
 *
 * @param action what
 * @param priority 1: before anything else, 2: tomorrow, 3: this week
 * @param where where
 * @param why the reason, in sentences
 * @param by the day by which it should be done, where there is one
 * @param item names it in {@code seen.csv}
 */
public record Task(
    Action action, int priority, Where where, String why, Optional<LocalDate> by, String item) {

  /** Leads to the sites that were amiss on a raft when it was last seen, in a reason. */
  static final String AMISS = "; look at what was amiss then: ";

  /** Most urgent first; of equals by place, as a person walks. */
  public static final Comparator<Task> ORDER =
      Comparator.comparingInt(Task::priority)
          .thenComparing(Task::action)
          .thenComparing(t -> t.by().orElse(LocalDate.MAX))
          .thenComparing(t -> t.where().station())
          .thenComparing(t -> t.where().pond())
          .thenComparing(t -> t.where().berth(), WalkingOrder.berths())
          .thenComparing(t -> t.where().raft())
          .thenComparing(Task::item);

  /** What is to be done; of equal priority the first here comes first. */
  public enum Action {
    /** Look at camera, lens, light and height of a station. */
    CHECK_THE_STATION,
    /** Mend what keeps the book from telling a raft's crop. */
    MEND_THE_BOOK,
    /** Photograph a raft that was expected and not seen. */
    PHOTOGRAPH_AT_ALL,
    /** Photograph again what could not be judged. */
    PHOTOGRAPH_AGAIN,
    /** Look at plants. */
    INSPECT,
    /** Harvest. */
    HARVEST,
    /** Give plants more room. */
    RE_SPACE,
    /** Weigh some plants. */
    WEIGH,
    /** Replace a tag that cannot be read. */
    REPLACE_TAG;

    /** Returns the words as written in reports, such as {@code photograph again}. */
    public String words() {
      return this == RE_SPACE ? "re-space" : name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /**
   * Where something is to be done.
   *
   * @param station the station; empty where none is meant
   * @param pond the pond; may be empty
   * @param berth the place in the pond; may be empty
   * @param raft the raft; empty for ponds and stations
   * @param sites the sites in order; empty for the whole raft
   */
  public record Where(String station, String pond, String berth, String raft, List<SiteId> sites) {

    /** Copies the list. */
    public Where {
      sites = List.copyOf(sites);
    }

    static Where ofStation(String station) {
      return new Where(station, "", "", "", List.of());
    }

    static Where ofPond(String pond) {
      return new Where("", pond, "", "", List.of());
    }

    /**
     * Returns the place in words, such as {@code raft DR-0401 (pond P1, berth 4), sites A1, A2};
     * the whole farm where ponds are not named.
     */
    public String words() {
      if (raft.isEmpty()) {
        String farm = station.isEmpty() ? "the whole farm" : "station " + station;
        return pond.isEmpty() ? farm : "pond " + pond;
      }
      String berthed = berth.isEmpty() ? "" : ", berth " + berth;
      String in = pond.isEmpty() ? "" : " (pond " + pond + berthed + ")";
      String at =
          sites.isEmpty()
              ? ""
              : (sites.size() == 1 ? ", site " : ", sites ")
                  + sites.stream().map(SiteId::toString).collect(Collectors.joining(", "));
      return "raft " + raft + in + at;
    }
  }

  /** Returns the task in sentences, for a person. */
  public String sentence() {
    String what =
        switch (action) {
          case CHECK_THE_STATION -> "Check " + where.words();
          case MEND_THE_BOOK -> "Mend the book for " + where.words();
          case PHOTOGRAPH_AT_ALL -> "Photograph " + where.words();
          case PHOTOGRAPH_AGAIN -> "Photograph again " + where.words();
          case INSPECT -> "Inspect " + where.words();
          case HARVEST -> "Harvest " + where.words();
          case RE_SPACE -> "Re-space " + where.words();
          case WEIGH -> "Weigh " + where.words();
          case REPLACE_TAG -> "Replace the tag of " + where.words();
        };
    return what + by.map(day -> " by " + day).orElse("") + ". " + why;
  }
}
