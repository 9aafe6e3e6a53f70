// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.run.MeasureBytes;
import org.raftgauge.batch.run.Measured;

/**
 * Tells which photos an earlier run measured by the same program under the same settings: the hash
 * of the parts that a photo depends on.
 *
 * <p>A file of the same path, size and time of change is not even read; where only its time or size
 * differ, a task reads it and compares the bytes.
 */
public final class Known {
  private final Map<Key, Entry> entries = new HashMap<>();

  /**
   * A measure in the dataset.
   *
   * @param round place of its round in the commit
   * @param sha256 of the bytes
   * @param bytes size of the file
   * @param modifiedMs when it was changed
   */
  public record Entry(int round, String sha256, long bytes, long modifiedMs) {}

  private record Key(String photo, String settings) {}

  /**
   * The photos of a run by what is to be done.
   *
   * @param known the rounds of the photos that need not be read, by path
   * @param wanted the photos to read, and to measure unless their bytes are known
   */
  public record Split(Map<String, Integer> known, List<Listed> wanted) {}

  private Known() {}

  /** Returns the knowledge of a new dataset. */
  static Known nothing() {
    return new Known();
  }

  /** Returns whether nothing is known. */
  boolean isEmpty() {
    return entries.isEmpty();
  }

  /**
   * Reads what was measured.
   *
   * @param measures rows of {@link Stored} with their {@code round}, by this program
   */
  public Known(Dataset<Row> measures) {
    measures
        .filter("measured.source = 'FRESH'")
        .selectExpr(
            "measured.measure.photo",
            "measured.settings",
            "round",
            "measured.measure.sha256",
            "bytes",
            "modifiedMs")
        .toLocalIterator()
        .forEachRemaining(this::add);
  }

  private void add(Row row) {
    Entry entry = new Entry(row.getInt(2), row.getString(3), row.getLong(4), row.getLong(5));
    entries.merge(
        new Key(row.getString(0), row.getString(1)),
        entry,
        (a, b) -> a.round() > b.round() ? a : b);
  }

  /**
   * Splits a run's photos.
   *
   * @param photos the photos
   * @param book the book
   * @return those that are known, and those to be read
   */
  public Split split(List<Listed> photos, Broadcast<BookFiles> book) {
    Map<String, Integer> known = new HashMap<>();
    List<Listed> wanted = new ArrayList<>();
    MeasureBytes measure = new MeasureBytes(book.value().open().book().measurer());
    for (Listed photo : photos) {
      Entry entry = entry(photo, measure);
      if (entry == null) {
        wanted.add(photo);
      } else if (entry.bytes() == photo.bytes() && entry.modifiedMs() == photo.modifiedMs()) {
        known.put(photo.photo(), entry.round());
      } else {
        wanted.add(photo.afterAll(entry.sha256()));
      }
    }
    return new Split(known, wanted);
  }

  private Entry entry(Listed photo, MeasureBytes measure) {
    return entries.isEmpty()
        ? null
        : entries.get(new Key(photo.photo(), measure.settings(photo.facts().facts())));
  }

  /**
   * Returns the round in which the bytes of a marked photo were measured.
   *
   * @param photo its path
   * @param settings the hash
   * @return place of the round in the commit
   */
  public int round(String photo, String settings) {
    return entries.get(new Key(photo, settings)).round();
  }

  /** Makes the row of a photo whose bytes an earlier run measured. */
  static Measured mark(String photo, String sha256, String settings) {
    return new Measured(
        Measured.failed(photo, sha256, "", "").measure(),
        settings,
        Measured.Source.HISTORY,
        false,
        "");
  }
}
