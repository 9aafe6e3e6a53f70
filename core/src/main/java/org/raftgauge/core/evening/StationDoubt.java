// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import org.raftgauge.core.station.StationFault;

/**
 * What the control charts of a station say of an evening.
 *
 * @param station the station
 * @param evening the farm's day
 * @param faults what is not as it was, at least one
 */
public record StationDoubt(String station, LocalDate evening, List<StationFault> faults) {

  /** Begins the reason of photos held for their station's sake. */
  public static final String HELD = "the station is not as it was: ";

  /** Copies the list. */
  public StationDoubt {
    faults = List.copyOf(faults);
  }

  /** Says whether the evening's photos of the station are held. */
  public boolean holds() {
    return faults.stream().anyMatch(StationFault::holds);
  }

  /** Returns why photos are held; empty where they are not. */
  public String heldReason() {
    String why =
        faults.stream()
            .filter(StationFault::holds)
            .map(StationFault::finding)
            .collect(Collectors.joining("; "));
    return why.isEmpty() ? "" : HELD + why;
  }

  /** Returns what to do, each remedy once. */
  public String remedy() {
    String what =
        faults.stream().map(StationFault::remedy).distinct().collect(Collectors.joining("; "));
    String meant =
        "; if it was changed on purpose, write changed_on: ["
            + since()
            + "] into stations/"
            + station
            + ".yaml";
    return what + (holds() ? "; then photograph again" : "") + meant;
  }

  /** Returns what changed and when, a clause a fault. */
  public String finding() {
    return faults.stream().map(StationFault::finding).collect(Collectors.joining("; "));
  }

  private LocalDate since() {
    return faults.stream().map(StationFault::since).min(LocalDate::compareTo).orElse(evening);
  }
}
