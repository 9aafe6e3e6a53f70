// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import static org.raftgauge.core.book.BookFolder.at;

import java.nio.file.Path;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.BookFolder;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;

/** A book whose events a test writes: R1 is a 2 x 3 board, R2 a 1 x 4, T1 a tray of 4 sites. */
abstract class PlantHistory {
  @TempDir Path folder;

  BookFolder book() {
    return BookFolder.in(folder);
  }

  CropBook with(String events) {
    return book().events(events).sound();
  }

  static Optional<String> plant(CropBook book, String spot, String when) {
    return grown(book, spot, when).map(Grown::plant);
  }

  static Optional<Grown> grown(CropBook book, String spot, String when) {
    int slash = spot.indexOf('/');
    SiteId site = SiteId.parse(spot.substring(slash + 1));
    return WhoGrewWhere.of(book).at(spot.substring(0, slash), site, at(when));
  }

  static String planted(CropBook book, String raft, String when) {
    NavigableSet<SiteId> sites = WhoGrewWhere.of(book).plantedSites(raft, at(when));
    return sites.stream().map(SiteId::toString).collect(Collectors.joining(" "));
  }
}
