// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.Optional;

/**
 * A raft that was measured and kept, but that no planting of the book explains.
 *
 * @param photo the photo that shows it
 * @param raft its id, where tag, manifest or name tell it
 * @param why why it is no raft of the book
 * @param remedy what to do
 */
public record Unassigned(String photo, Optional<String> raft, String why, String remedy) {}
