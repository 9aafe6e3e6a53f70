// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;
import java.util.Map;
import org.raftgauge.core.problem.Findings;

/** What the ledger is played from, and where it puts what does not fit together. */
record LedgerInput(
    List<PlantingRow> rows,
    Map<String, List<Layout>> layouts,
    FarmDay farmDay,
    Rafts rafts,
    Findings findings) {

  LedgerInput reportingTo(Findings other) {
    return new LedgerInput(rows, layouts, farmDay, rafts, other);
  }
}
