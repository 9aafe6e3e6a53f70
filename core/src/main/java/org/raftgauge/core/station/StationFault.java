// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.time.LocalDate;

/**
 * Something about a station that is not as it was.
 *
 * @param sign what shows it
 * @param since the first evening of the change that still lasts
 * @param evenings evenings since then with photos
 * @param value the newest value
 * @param usual what it was before
 * @param meaning what it means
 * @param remedy what to do
 */
public record StationFault(
    StationSign sign,
    LocalDate since,
    int evenings,
    double value,
    double usual,
    String meaning,
    String remedy) {}
