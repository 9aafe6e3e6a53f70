// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Optional;

/**
 * What a photo's file name says.
 *
 * @param date the day, where it says one
 * @param time the local time, where it says one
 * @param raft the raft, where it says one
 * @param station the station, where it says one
 * @param slot the slot, where it says one
 * @param impossible what stands for a day or a time and is none, such as 2026-02-30, where it does
 */
public record PhotoName(
    Optional<LocalDate> date,
    Optional<LocalTime> time,
    Optional<String> raft,
    Optional<String> station,
    Optional<String> slot,
    Optional<String> impossible) {
  private static final LocalTime EVENING = LocalTime.of(18, 0);

  /** Returns the name that says nothing. */
  public static PhotoName silent() {
    return new PhotoName(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * Returns date and time on the farm's clock, where there is a date; without a time it is 18:00.
   */
  public Optional<LocalDateTime> takenAt() {
    return date.map(day -> day.atTime(time.orElse(EVENING)));
  }
}
