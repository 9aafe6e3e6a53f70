// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Optional;

/**
 * What is known of a photo besides its bytes.
 *
 * @param photo its path below the photo folder, with forward slashes
 * @param takenAt {@code taken_at} of the manifest, as written, where given
 * @param station of the manifest, where given
 * @param slot of the manifest, where given
 * @param raft of the manifest, where given
 */
public record PhotoFacts(
    String photo,
    Optional<String> takenAt,
    Optional<String> station,
    Optional<String> slot,
    Optional<String> raft) {

  /**
   * Returns the facts of a photo that no manifest names.
   *
   * @param photo its path below the photo folder
   * @return facts with nothing but the path
   */
  public static PhotoFacts of(String photo) {
    return new PhotoFacts(
        photo, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }
}
