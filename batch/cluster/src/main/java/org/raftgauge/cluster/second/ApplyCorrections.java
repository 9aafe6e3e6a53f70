// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.time.Instant;
import java.util.Iterator;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.raftgauge.batch.run.Measured;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.first.Stored;
import org.raftgauge.cluster.rows.RecordRows;

/** Corrects photos as the book says; columns after those of {@link Stored} stay. */
final class ApplyCorrections implements MapPartitionsFunction<Row, Row> {
  private static final long serialVersionUID = 1;

  private final Broadcast<BookFiles> book;

  ApplyCorrections(Broadcast<BookFiles> book) {
    this.book = book;
  }

  @Override
  public Iterator<Row> call(Iterator<Row> photos) {
    Corrections hold = Corrections.of(book.value().open().corrections(), Instant.MAX);
    Iterable<Row> rows = () -> photos;
    return StreamSupport.stream(rows.spliterator(), false)
        .map(row -> hold.photos().contains(SecondPass.sha256(row)) ? corrected(row, hold) : row)
        .iterator();
  }

  private static Row corrected(Row row, Corrections hold) {
    Stored stored = RecordRows.of(Stored.class).record(row);
    Measured as = stored.measured();
    Measured measured =
        new Measured(
            hold.apply(as.measure()), as.settings(), as.source(), as.pictured(), as.note());
    Row first =
        RecordRows.of(Stored.class).row(new Stored(measured, stored.bytes(), stored.modifiedMs()));
    Stream<Integer> columns = Stream.iterate(0, i -> i + 1).limit(row.size());
    return RowFactory.create(
        columns.map(i -> i < first.size() ? first.get(i) : row.get(i)).toArray());
  }
}
