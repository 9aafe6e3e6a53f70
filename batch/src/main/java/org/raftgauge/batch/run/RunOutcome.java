// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Map;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.report.RaftRows;

/**
 * All that a run has to show once its tables are written.
 *
 * @param photos one for each photo file, in order of their paths
 * @param rafts the rafts that count or are held, those that no planting explains too
 * @param pictures for each photo the path of its pictures in the run folder, without ending
 * @param summary what the run came to
 * @param stamp what made the numbers
 */
public record RunOutcome(
    List<PhotoMeasure> photos,
    List<RaftRows> rafts,
    Map<String, String> pictures,
    RunSummary summary,
    Stamp stamp) {

  /**
   * What made the numbers.
   *
   * @param version of the program
   * @param measuringCode hash of the code that measures
   * @param book hash of the book's files
   */
  public record Stamp(String version, String measuringCode, String book) {}

  /** Copies the lists. */
  public RunOutcome {
    photos = List.copyOf(photos);
    rafts = List.copyOf(rafts);
    pictures = Map.copyOf(pictures);
  }
}
