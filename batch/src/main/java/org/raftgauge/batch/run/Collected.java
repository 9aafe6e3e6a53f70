// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.stream.Stream;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.report.RaftRows;

/**
 * What goes into a run's tables.
 *
 * @param settled one for each photo file, in order of their paths
 * @param assigned the rafts of the book that count or are held
 * @param strangers rafts that no planting explains, measured and kept
 * @param unassigned why, for those of them that are not held
 */
public record Collected(
    List<Settled> settled,
    List<RaftRows> assigned,
    List<RaftRows> strangers,
    List<Unassigned> unassigned) {

  /** Copies the lists. */
  public Collected {
    settled = List.copyOf(settled);
    assigned = List.copyOf(assigned);
    strangers = List.copyOf(strangers);
    unassigned = List.copyOf(unassigned);
  }

  /** Returns all rafts. */
  public List<RaftRows> rafts() {
    return Stream.concat(assigned.stream(), strangers.stream()).toList();
  }

  /** Returns the photos. */
  public List<PhotoMeasure> photos() {
    return settled.stream().map(Settled::photo).toList();
  }
}
