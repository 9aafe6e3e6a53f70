// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import org.raftgauge.core.measure.PhotoStatus;

/**
 * What a run came to.
 *
 * @param folder where it is published
 * @param photos number of photos by status
 * @param rafts number of rafts in the tables
 * @param sites number of sites in the tables
 * @param totalAreaCm2 projected leaf area of all of them, cm2
 * @param evening the latest evening of its photos, where there is one
 * @param notPhotographed rafts expected on that evening that no photo shows
 * @param attention photos that were held or refused, with reason and remedy, a line each
 * @param notes what else a person should know, a line each
 */
public record RunSummary(
    Path folder,
    Map<PhotoStatus, Integer> photos,
    int rafts,
    int sites,
    double totalAreaCm2,
    Optional<LocalDate> evening,
    NavigableSet<String> notPhotographed,
    List<String> attention,
    List<String> notes) {

  /** Copies the lists. */
  public RunSummary {
    attention = List.copyOf(attention);
    notes = List.copyOf(notes);
  }
}
