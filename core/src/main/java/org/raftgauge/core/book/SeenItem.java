// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A worklist row that was seen, done or put off.
 *
 * @param line its line in {@code seen.csv}
 * @param item the worklist row's {@code item}
 * @param until the first day it may show again, where given
 * @param by who, may be empty
 * @param note may be empty
 * @param seenOn the farm's day on which that was said; where absent it holds for every evening
 */
public record SeenItem(
    int line,
    String item,
    Optional<LocalDate> until,
    String by,
    String note,
    Optional<LocalDate> seenOn) {}
