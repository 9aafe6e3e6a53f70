// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.raftgauge.core.book.FarmDay;

/**
 * The farm's time and how the camera's clock departs from it.
 *
 * @param day the farm's time zone, and when its day begins
 * @param cameraOffset what to add to the camera's clock to get the farm's time
 * @param now the present, where the caller wants photos from the future doubted
 */
public record FarmClock(FarmDay day, Duration cameraOffset, Optional<Instant> now) {

  /** Returns the farm's time zone. */
  ZoneId zone() {
    return day.zone();
  }
}
