// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * The farm's time and how the camera's clock departs from it.
 *
 * @param zone the farm's time zone
 * @param cameraOffset what to add to the camera's clock to get the farm's time
 * @param now the present, where the caller wants photos from the future doubted
 */
public record FarmClock(ZoneId zone, Duration cameraOffset, Optional<Instant> now) {}
