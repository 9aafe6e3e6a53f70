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
}
