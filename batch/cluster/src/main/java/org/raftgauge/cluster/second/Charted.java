// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.store.Correction;
import org.raftgauge.cluster.rows.RecordRows;
import org.raftgauge.core.evening.StationDoubt;

/**
 * What the chart of a station says when some corrections are known. Forecasts of past evenings are
 * replayed by what was corrected by then, so a station is charted for each of these times.
 *
 * @param known number of corrections that were entered by then
 * @param doubt what the chart says
 */
public record Charted(int known, StationDoubt doubt) {

  /**
   * Returns what charts say by some time.
   *
   * @param rows of this record
   * @param entered every correction, in the order of their numbers
   * @param by what was entered at this moment or later is not looked at
   * @return the doubts
   */
  public static List<StationDoubt> by(List<Row> rows, List<Correction> entered, Instant by) {
    int known = known(entered, by);
    return rows.stream()
        .map(RecordRows.of(Charted.class)::record)
        .filter(charted -> charted.known() == known)
        .map(Charted::doubt)
        .toList();
  }

  /** Returns the times at which other corrections were known, by their number. */
  static Map<Integer, Instant> times(List<Correction> entered, Farm farm) {
    Map<Integer, Instant> times = new TreeMap<>();
    times.put(0, Instant.MIN);
    for (Correction each : entered) {
      Instant end =
          farm.farmDay().start(farm.farmDay().evening(each.entry().at().toInstant()).plusDays(1));
      times.put(known(entered, end), end);
    }
    times.put(entered.size(), Instant.MAX);
    return times;
  }

  private static int known(List<Correction> entered, Instant by) {
    return (int) entered.stream().filter(c -> c.entry().at().toInstant().isBefore(by)).count();
  }
}
