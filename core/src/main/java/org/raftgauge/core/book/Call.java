// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.Optional;

/**
 * The head grower's own word on a raft or a site.
 *
 * @param line its line in {@code calls.csv}
 * @param raft the raft
 * @param site the site, or nothing for the whole raft
 * @param calledOn the evening it speaks of
 * @param call the word, one of the verdicts
 * @param by who, may be empty
 * @param note may be empty
 */
public record Call(
    int line,
    String raft,
    Optional<SiteId> site,
    LocalDate calledOn,
    String call,
    String by,
    String note) {}
