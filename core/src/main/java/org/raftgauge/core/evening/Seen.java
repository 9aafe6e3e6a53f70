// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.Instant;
import java.util.List;
import org.raftgauge.core.history.SiteLook;

/**
 * Everything that photos said so far, the photos that count alone.
 *
 * @param rafts the rafts that they showed
 * @param sites what they said of the sites
 * @param stations what they said of their stations, where something is not as it was
 */
public record Seen(List<RaftLook> rafts, List<SiteLook> sites, List<StationDoubt> stations) {

  /** Copies the lists. */
  public Seen {
    rafts = List.copyOf(rafts);
    sites = List.copyOf(sites);
    stations = List.copyOf(stations);
  }

  /**
   * Makes what was seen where all stations are as they were.
   *
   * @param rafts the rafts
   * @param sites what was said of the sites
   */
  public Seen(List<RaftLook> rafts, List<SiteLook> sites) {
    this(rafts, sites, List.of());
  }

  /**
   * Returns the rafts seen before an instant, without the sites: their plants' series have them.
   */
  Seen raftsBefore(Instant end) {
    return new Seen(
        rafts.stream().filter(r -> r.takenAt().toInstant().isBefore(end)).toList(),
        List.of(),
        stations);
  }
}
