// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.report.RaftRows;

/**
 * What goes into a run's tables.
 *
 * @param settled one for each photo file, in order of their paths
 * @param rafts the rafts that count or are held
 */
record Collected(List<Settled> settled, List<RaftRows> rafts) {

  /** Returns the photos. */
  List<PhotoMeasure> photos() {
    return settled.stream().map(Settled::photo).toList();
  }
}
