// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * What {@code book.yaml} says.
 *
 * @param farmDay time zone and the time at which a day begins
 * @param station the station of photos that nothing else places, where given
 * @param photoName how photo files are named, where given
 * @param units of the reports for people
 */
public record BookSettings(
    FarmDay farmDay, Optional<String> station, Optional<PhotoNamePattern> photoName, Units units) {

  /** When the farm's day begins where the book does not say: 04:00, when nobody takes photos. */
  static final LocalTime DAY_STARTS_AT = LocalTime.of(4, 0);

  /** Returns what holds while {@code book.yaml} cannot be read: UTC, 04:00, metric. */
  static BookSettings unread() {
    return new BookSettings(
        new FarmDay(ZoneOffset.UTC, DAY_STARTS_AT),
        Optional.empty(),
        Optional.empty(),
        Units.METRIC);
  }
}
