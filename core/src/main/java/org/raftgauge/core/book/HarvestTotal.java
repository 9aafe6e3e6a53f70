// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.OffsetDateTime;

/**
 * What a raft yielded.
 *
 * @param line its line in {@code harvests.csv}
 * @param raft the raft
 * @param harvestedAt when
 * @param heads heads harvested, 0 or more
 * @param totalWeightG their weight together, g, 0 or more
 */
public record HarvestTotal(
    int line, String raft, OffsetDateTime harvestedAt, int heads, double totalWeightG) {}
