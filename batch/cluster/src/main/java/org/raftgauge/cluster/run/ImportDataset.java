// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.raftgauge.batch.run.Measured;
import org.raftgauge.batch.store.BookLock;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Origin;
import org.raftgauge.cluster.dataset.Commit;
import org.raftgauge.cluster.dataset.DatasetFolder;
import org.raftgauge.cluster.first.Stored;
import org.raftgauge.cluster.rows.RecordRows;

/**
 * Takes a dataset's measures into the history of a farm's book, every digit: a run on the farm's
 * computer then knows the photos as if it had measured them.
 */
public final class ImportDataset {
  private static final int BATCH = 500;

  private final SparkSession spark;
  private final DatasetFolder dataset;

  /**
   * What came of it.
   *
   * @param added photos that are new, or measured anew
   * @param known photos that the history had as they are
   */
  public record Outcome(int added, int known) {}

  /**
   * Prepares.
   *
   * @param spark the session
   * @param dataset the dataset
   */
  public ImportDataset(SparkSession spark, DatasetFolder dataset) {
    this.spark = spark;
    this.dataset = dataset;
  }

  /**
   * Imports.
   *
   * @param book the book's folder
   * @param patience how long to wait for a run on the book
   * @param waiting told who holds the book
   * @return what came of it
   * @throws IOException if the history cannot be written
   */
  @SuppressWarnings("try") // the lock is held, not used
  public Outcome into(Path book, Duration patience, Consumer<String> waiting) throws IOException {
    int added = 0;
    int known = 0;
    try (BookLock lock = BookLock.take(book, patience, waiting);
        History history = History.open(book.resolve("history.db"))) {
      for (Commit.Round round : dataset.commit().rounds()) {
        Iterator<Row> rows = rows(round);
        List<Kept> batch = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        while (rows.hasNext()) {
          Measured measured = RecordRows.of(Stored.class).record(rows.next()).measured();
          String sha256 = measured.measure().sha256();
          boolean has =
              !seen.add(sha256)
                  || history
                      .find(sha256)
                      .filter(k -> k.origin().settings().equals(measured.settings()))
                      .isPresent();
          known += has ? 1 : 0;
          added += has ? 0 : 1;
          if (!has) {
            batch.add(
                Kept.fresh(
                    measured.measure(),
                    new Origin(
                        measured.settings(),
                        "cluster " + round.folder(),
                        round.version(),
                        round.code())));
          }
          if (batch.size() == BATCH) {
            history.save(batch);
            batch.clear();
          }
        }
        history.save(batch);
      }
    }
    return new Outcome(added, known);
  }

  /** Returns the measures of a round in the order of their paths; of copies the first. */
  private Iterator<Row> rows(Commit.Round round) {
    Dataset<Row> all =
        spark
            .read()
            .schema(RecordRows.of(Stored.class).schema())
            .parquet(dataset.round(round.folder()));
    return all.filter("measured.source = 'FRESH'")
        .orderBy("measured.measure.photo")
        .toLocalIterator();
  }
}
