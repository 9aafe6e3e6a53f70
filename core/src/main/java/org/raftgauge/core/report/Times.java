// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;

/** Writes times as ISO 8601 with offset, to the second. */
final class Times {

  private Times() {}

  /** Returns a time such as {@code 2026-04-11T18:00:00+01:00}, or an empty text. */
  static String text(Optional<OffsetDateTime> time) {
    return time.map(t -> t.truncatedTo(ChronoUnit.SECONDS))
        .map(DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssxxx", Locale.ROOT)::format)
        .orElse("");
  }
}
