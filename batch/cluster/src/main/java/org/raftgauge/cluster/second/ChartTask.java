// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.SettleRafts;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.rows.RecordRows;
import org.raftgauge.core.evening.StationDoubt;

/** Charts a station over all its photos. */
final class ChartTask implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1;

  private final Broadcast<BookFiles> book;

  ChartTask(Broadcast<BookFiles> book) {
    this.book = book;
  }

  @Override
  public Iterator<Row> call(String station, Iterator<Row> photos) throws IOException {
    Farm farm = book.value().open().book().farm();
    try (PhotosAtHand hand = PhotosAtHand.of(photos)) {
      List<StationDoubt> doubts = SettleRafts.doubts(hand.history(), farm);
      return doubts.stream().map(RecordRows.of(StationDoubt.class)::row).toList().iterator();
    }
  }
}
