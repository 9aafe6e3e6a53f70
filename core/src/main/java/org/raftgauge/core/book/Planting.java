// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;

/**
 * A raft's crop, or a range of its sites, from sowing to its end.
 *
 * @param raft raft id
 * @param pond pond, may be empty
 * @param berth place in the pond, may be empty
 * @param crop crop name
 * @param variety may be empty
 * @param layout layout name
 * @param sites the sites it holds; empty means the whole board
 * @param sownOn day of sowing, where known
 * @param transplantedOn day of transplanting, where it has come
 * @param harvestBy planned, where given
 * @param endedOn the first day it is no longer there, where it has ended
 * @param lot may be empty
 */
public record Planting(
    String raft,
    String pond,
    String berth,
    String crop,
    String variety,
    String layout,
    Set<SiteId> sites,
    Optional<LocalDate> sownOn,
    Optional<LocalDate> transplantedOn,
    Optional<LocalDate> harvestBy,
    Optional<LocalDate> endedOn,
    String lot) {

  /** Copies the sites. */
  public Planting {
    sites = Set.copyOf(sites);
  }

  /**
   * Returns the first day on which its plants stand on this raft: the day of transplanting, or of
   * sowing where they were sown here (a tray).
   */
  public LocalDate startsOn() {
    return transplantedOn
        .or(() -> sownOn)
        .orElseThrow(() -> new IllegalStateException("a planting has a day of sowing or planting"));
  }

  /**
   * Says whether its plants stand on this raft on an evening, as far as this row tells.
   *
   * @param evening the farm's day
   * @return true from {@link #startsOn()} until the day before {@link #endedOn()}
   */
  public boolean holdsOn(LocalDate evening) {
    return !evening.isBefore(startsOn()) && endedOn.map(evening::isBefore).orElse(true);
  }

  /**
   * Says whether it holds a site.
   *
   * @param site a site of its layout
   * @return true if it does
   */
  public boolean holds(SiteId site) {
    return sites.isEmpty() || sites.contains(site);
  }

  /** Says whether it shares the raft with another on some day. */
  boolean sharesRaftWith(Planting other) {
    return raft.equals(other.raft)
        && endedOn.map(other.startsOn()::isBefore).orElse(true)
        && other.endedOn.map(startsOn()::isBefore).orElse(true);
  }

  /** Says whether it holds a site on some day that another holds then too. */
  boolean overlaps(Planting other) {
    boolean sameSites =
        sites.isEmpty() || other.sites.isEmpty() || sites.stream().anyMatch(other.sites::contains);
    return sharesRaftWith(other) && sameSites;
  }
}
