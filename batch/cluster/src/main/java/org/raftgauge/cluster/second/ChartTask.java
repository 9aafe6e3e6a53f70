// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.batch.run.SettleRafts;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.rows.RecordRows;
import org.raftgauge.core.evening.StationDoubt;

/** Charts a station over all its photos, by what was corrected at any time. */
final class ChartTask implements FlatMapGroupsFunction<String, Row, Row> {
  private static final long serialVersionUID = 1;

  private final Broadcast<BookFiles> book;

  ChartTask(Broadcast<BookFiles> book) {
    this.book = book;
  }

  @Override
  public Iterator<Row> call(String station, Iterator<Row> photos) throws IOException {
    BookFiles.Opened opened = book.value().open();
    Farm farm = opened.book().farm();
    List<Row> rows = new ArrayList<>();
    try (PhotosAtHand hand = PhotosAtHand.of(photos, opened)) {
      for (Map.Entry<Integer, Instant> at : Charted.times(opened.corrections(), farm).entrySet()) {
        for (StationDoubt doubt :
            SettleRafts.doubts(hand.history().measures(at.getValue()), farm)) {
          rows.add(RecordRows.of(Charted.class).row(new Charted(at.getKey(), doubt)));
        }
      }
    }
    return rows.iterator();
  }
}
