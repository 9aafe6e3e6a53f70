// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.OffsetDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Says what happened to plants or to a raft.
 *
 * @param line its line in {@code events.csv}
 * @param at when; one that is written as a date alone happened as the farm's day began
 * @param kind what happened
 * @param raft the raft
 * @param sites the sites in the order written; empty for all that hold a plant, in grid order
 * @param target where plants were moved to, for {@link Kind#MOVED}; no rafts and sites otherwise
 * @param by who, may be empty
 * @param note may be empty
 */
public record Event(
    int line,
    OffsetDateTime at,
    Kind kind,
    String raft,
    List<SiteId> sites,
    Target target,
    String by,
    String note) {

  /** What happened. */
  public enum Kind {
    /** Plants went to other sites, with their history. */
    MOVED,
    /** A new plant was set in place of what was there. */
    REPLACED,
    /** Plants were taken out at the sites named; with none named, each site was thinned to one. */
    THINNED,
    /** Plants were cut and grow again. */
    CUT,
    /** Plants were taken out to be weighed. */
    WEIGHED,
    /** Plants were harvested. */
    HARVESTED,
    /** Plants died. */
    DIED,
    /** The board was cleaned; nothing happened to its plants. */
    CLEANED
  }

  /**
   * Where plants were moved to.
   *
   * @param rafts rafts in the order in which they are filled; empty for the same raft
   * @param sites sites in the order in which they are filled; empty for the free ones in grid order
   * @param layout layout of the rafts, or empty where the book tells it
   */
  public record Target(List<String> rafts, List<SiteId> sites, String layout) {

    /** Copies the lists. */
    public Target {
      rafts = List.copyOf(rafts);
      sites = List.copyOf(sites);
    }

    /** Returns the target of events that move nothing. */
    public static Target none() {
      return new Target(List.of(), List.of(), "");
    }
  }

  /** Copies the sites. */
  public Event {
    sites = List.copyOf(sites);
  }

  /** Returns the rafts that it is about. */
  Set<String> rafts() {
    Set<String> rafts = new HashSet<>(target.rafts());
    rafts.add(raft);
    return rafts;
  }

  /**
   * Says whether the plants stay in their holes although the kind takes plants out: a thinning or
   * weighing whose note begins with {@code kept}.
   */
  public boolean keepsPlants() {
    return note.regionMatches(true, 0, "kept", 0, 4);
  }
}
