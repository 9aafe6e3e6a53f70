// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.time.LocalDate;
import java.util.Locale;

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
    String remedy) {

  /** Says whether photos taken under it are to be held. */
  public boolean holds() {
    return sign.holds(value, usual);
  }

  /**
   * Returns what moved, when, by how much: {@code since 2026-04-12 (1 evening): the boards look
   * smaller ... (height 1540 mm, usually 1501 mm)}.
   */
  public String finding() {
    return String.format(
        Locale.ROOT,
        "since %s (%d %s): %s (%s %s, usually %s)",
        since,
        evenings,
        evenings == 1 ? "evening" : "evenings",
        meaning,
        sign.words(),
        sign.shown(value),
        sign.shown(usual));
  }
}
