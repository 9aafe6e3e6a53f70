// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.batch.store.History;

/** Tells from the history which rafts a photo shows. */
public final class KnownRafts implements AutoCloseable {
  private final Optional<History> history;

  private KnownRafts(Optional<History> history) {
    this.history = history;
  }

  /**
   * Opens the history of a book, which need not have one yet.
   *
   * @param book the book's folder
   * @throws IOException if it cannot be read
   */
  public static KnownRafts open(Path book) throws IOException {
    Path file = book.resolve("history.db");
    return new KnownRafts(Files.exists(file) ? Optional.of(History.open(file)) : Optional.empty());
  }

  /**
   * Returns the rafts that a photo shows.
   *
   * @param bytes of its file
   * @return their ids; none where it was not measured before
   * @throws IOException if the history cannot be read
   */
  public Set<String> on(byte[] bytes) throws IOException {
    if (history.isEmpty()) {
      return Set.of();
    }
    return history.get().find(Digest.of(bytes)).stream()
        .flatMap(kept -> kept.measure().rafts().stream())
        .flatMap(raft -> raft.raft().stream())
        .collect(Collectors.toSet());
  }

  @Override
  public void close() throws IOException {
    if (history.isPresent()) {
      history.get().close();
    }
  }
}
