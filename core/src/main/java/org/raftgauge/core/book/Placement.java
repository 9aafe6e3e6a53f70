// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Says which raft lies in a slot of a fixed station.
 *
 * @param line its line in {@code placements.csv}
 * @param station the station
 * @param slot the slot
 * @param raft the raft
 * @param from the first day it lies there
 * @param to the first day it no longer does, where it has left
 */
public record Placement(
    int line, String station, String slot, String raft, LocalDate from, Optional<LocalDate> to) {

  /**
   * Says whether it holds on an evening.
   *
   * @param evening the farm's day
   * @return true from {@code from} until the day before {@code to}
   */
  public boolean holdsOn(LocalDate evening) {
    return !evening.isBefore(from) && to.map(evening::isBefore).orElse(true);
  }

  boolean overlaps(Placement other) {
    return to.map(other.from::isBefore).orElse(true) && other.to.map(from::isBefore).orElse(true);
  }
}
