// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.OffsetDateTime;
import org.raftgauge.core.site.SiteMeasure;

/**
 * What one photo that counts said of one site of a raft.
 *
 * @param photo the photo
 * @param station where it was taken; empty where unknown
 * @param raft the raft
 * @param takenAt when
 * @param measure what it said
 */
public record SiteLook(
    String photo, String station, String raft, OffsetDateTime takenAt, SiteMeasure measure) {}
