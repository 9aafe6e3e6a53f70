// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Path;

/** Writes what people read of a run. */
public interface ReportPage {

  /** Writes nothing. */
  ReportPage NONE = (outcome, folder) -> {};

  /**
   * Writes the page and what belongs to it.
   *
   * @param outcome what the run has to show
   * @param folder the run folder, under construction, its tables and pictures in it
   * @throws IOException if it cannot be written
   */
  void write(RunOutcome outcome, Path folder) throws IOException;
}
