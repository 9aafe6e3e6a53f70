// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.time.LocalDate;

/**
 * Days of a raft, by the dates written in photos' times.
 *
 * @param raft its id
 * @param first the first day
 * @param last the last day
 */
public record RaftDays(String raft, LocalDate first, LocalDate last) {}
