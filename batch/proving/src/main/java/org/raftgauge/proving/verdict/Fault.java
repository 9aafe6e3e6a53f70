// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.verdict;

import java.time.LocalDate;

/**
 * A fault of a pond or a station.
 *
 * @param what {@code pond} or {@code station}
 * @param name which
 * @param from the evening by which a pond has lost 10 %, or on which a camera first sees less
 */
public record Fault(String what, String name, LocalDate from) {}
