// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.second;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import org.apache.commons.io.FileUtils;
import org.apache.spark.sql.Row;
import org.raftgauge.batch.run.Measured;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Origin;
import org.raftgauge.cluster.first.BookFiles;
import org.raftgauge.cluster.first.Stored;
import org.raftgauge.cluster.rows.RecordRows;

/**
 * The photos of a task as a history of its own, for as long as the task runs: what a farm's office
 * computer would know if it had measured just these. So every question that a run asks its history
 * is answered by the same code.
 */
public final class PhotosAtHand implements AutoCloseable {
  private static final int BATCH = 500;

  private final Path folder;
  private final History history;

  private PhotosAtHand(Path folder, History history) {
    this.folder = folder;
    this.history = history;
  }

  /**
   * Collects.
   *
   * @param rows of {@link Stored}, as measured; of photos with the same bytes the first is kept
   * @param book whose corrections are entered
   * @return the history, to be closed
   * @throws IOException if there is no room for it
   */
  public static PhotosAtHand of(Iterator<Row> rows, BookFiles.Opened book) throws IOException {
    Path folder = Files.createTempDirectory("raftgauge-task");
    PhotosAtHand hand = new PhotosAtHand(folder, book.history(folder.resolve("history.db")));
    Set<String> hashes = new HashSet<>();
    List<Kept> batch = new ArrayList<>();
    while (rows.hasNext()) {
      Measured measured = RecordRows.of(Stored.class).record(rows.next()).measured();
      if (hashes.add(measured.measure().sha256())) {
        batch.add(Kept.fresh(measured.measure(), new Origin(measured.settings(), "", "", "")));
      }
      if (batch.size() == BATCH || !rows.hasNext()) {
        hand.history.save(batch);
        batch.clear();
      }
    }
    return hand;
  }

  /** Returns the history. */
  public History history() {
    return history;
  }

  @Override
  public void close() throws IOException {
    history.close();
    FileUtils.deleteQuietly(folder.toFile());
  }
}
