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
 */
public record Seen(List<RaftLook> rafts, List<SiteLook> sites) {

  /** Copies the lists. */
  public Seen {
    rafts = List.copyOf(rafts);
    sites = List.copyOf(sites);
  }

  /** Returns what was seen before an instant. */
  Seen before(Instant end) {
    return new Seen(
        rafts.stream().filter(r -> r.takenAt().toInstant().isBefore(end)).toList(),
        sites.stream().filter(s -> s.takenAt().toInstant().isBefore(end)).toList());
  }
}
