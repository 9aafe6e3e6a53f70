// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.grader.Grader;

/** Tells what is to come from an evening. */
public interface ForecastSource {

  /** Tells nothing. */
  ForecastSource NONE = (evening, correctedBy) -> Optional.empty();

  /**
   * Forecasts from the book and its history, seeing nothing later than the evening.
   *
   * @param evening the farm's day
   * @param correctedBy corrections that were entered at this moment or later are not looked at
   * @return the forecast, or nothing where nothing can be told
   * @throws IOException if the history cannot be read
   */
  Optional<EveningOutlook> from(LocalDate evening, Instant correctedBy) throws IOException;

  /**
   * Forecasts as {@link #from(LocalDate, Instant)} does, from looks that are at hand.
   *
   * @param looks what the photos said that the evening is closed from
   * @param evening the farm's day
   * @param correctedBy corrections that were entered at this moment or later are not looked at
   * @return the forecast, or nothing where nothing can be told
   * @throws IOException if the history cannot be read
   */
  default Optional<EveningOutlook> from(EveningLooks looks, LocalDate evening, Instant correctedBy)
      throws IOException {
    return from(evening, correctedBy);
  }

  /**
   * Returns the first day of which photos are needed to forecast from an evening.
   *
   * @param evening the farm's day
   */
  default LocalDate firstDay(LocalDate evening) {
    return evening;
  }

  /** Returns the book's graders by crop, whenever they were fitted. */
  default Map<String, Grader> graders() {
    return Map.of();
  }
}
