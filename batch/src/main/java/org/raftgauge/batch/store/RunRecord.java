// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * A run as the history keeps it.
 *
 * @param run its id
 * @param startedAt when it started
 * @param version the program's version
 * @param photos number of photos
 * @param pictured hashes of the photos that it made pictures of
 */
public record RunRecord(
    String run, OffsetDateTime startedAt, String version, int photos, List<String> pictured) {

  /** Copies the list. */
  public RunRecord {
    pictured = List.copyOf(pictured);
  }

  /**
   * A run of which it is not known that its folder stands.
   *
   * @param run its id
   * @param folder where it was to stand
   */
  public record Unpublished(String run, Path folder) {}
}
