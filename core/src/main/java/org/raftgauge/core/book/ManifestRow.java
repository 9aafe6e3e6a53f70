// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Optional;

/**
 * What the manifest says of a photo.
 *
 * @param line its line in {@code manifest.csv}
 * @param photo the photo's path below the manifest's folder, with forward slashes
 * @param takenAt when it was taken, as written, where given; {@link FarmDay#parseTime} reads it
 * @param station where it was taken, where given
 * @param slot the slot it shows, where given
 * @param raft the raft it shows, where given
 */
public record ManifestRow(
    int line,
    String photo,
    Optional<String> takenAt,
    Optional<String> station,
    Optional<String> slot,
    Optional<String> raft) {}
