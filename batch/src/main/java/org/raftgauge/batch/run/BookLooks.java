// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Tenure;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** Reads from a book's history what photos that count said, each board the right way round. */
public final class BookLooks {
  private BookLooks() {}

  /**
   * Reads.
   *
   * @param book the crop book as read
   * @param folder of the book
   * @param evening photos of later evenings are left out
   * @return looks in a stable order; none where there is no history
   * @throws IOException if the history cannot be read
   */
  public static List<SiteLook> upTo(CropBook book, Path folder, LocalDate evening)
      throws IOException {
    Path file = folder.resolve("history.db");
    if (!Files.exists(file)) {
      return List.of();
    }
    TreeSet<String> rafts = new TreeSet<>();
    book.tenures().stream().map(Tenure::raft).forEach(rafts::add);
    Map<String, PhotoMeasure> photos = new LinkedHashMap<>();
    TreeSet<String> counted = new TreeSet<>();
    try (History history = History.open(file)) {
      for (String raft : rafts) {
        for (Kept kept : history.countedRaft(raft)) {
          PhotoMeasure photo = kept.measure();
          boolean known =
              photo
                  .takenAt()
                  .filter(at -> !book.farmDay().evening(at.toInstant()).isAfter(evening))
                  .isPresent();
          if (known) {
            photos.put(photo.sha256(), photo);
            counted.add(photo.sha256() + "/" + raft);
          }
        }
      }
    }
    List<SiteLook> looks = new ArrayList<>();
    SettleHalfTurns.settle(List.copyOf(photos.values()), new BookFarm(book, ""))
        .forEach(outcome -> add(looks, outcome.photo(), counted));
    return looks;
  }

  private static void add(List<SiteLook> looks, PhotoMeasure photo, Set<String> counted) {
    for (RaftMeasure raft : photo.rafts()) {
      String id = raft.raft().orElse("");
      if (raft.held().isEmpty() && counted.contains(photo.sha256() + "/" + id)) {
        for (SiteMeasure site : raft.sites()) {
          looks.add(
              new SiteLook(
                  photo.photo(), photo.station(), id, photo.takenAt().orElseThrow(), site));
        }
      }
    }
  }
}
