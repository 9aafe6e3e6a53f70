// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * What a person asks for.
 *
 * @param photos the photo folder
 * @param book the book's folder
 * @param out the folder to publish; a new one in the book's {@code runs} where absent
 * @param workers photos measured at once, 1 or more
 * @param patience how long to wait for another run on the same book
 * @param startedAt when the run was asked for
 */
public record RunRequest(
    Path photos,
    Path book,
    Optional<Path> out,
    int workers,
    Duration patience,
    OffsetDateTime startedAt) {

  /** Checks the number of workers. */
  public RunRequest {
    if (workers < 1) {
      throw new IllegalArgumentException("workers must be >= 1, got " + workers);
    }
  }

  /** Returns the run's id, of its start and process. */
  String id() {
    return startedAt.toInstant() + "-" + ProcessHandle.current().pid();
  }
}
