// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import org.raftgauge.batch.store.Correction;

/** Says in short which corrections a result obeys. */
public final class CorrectionNotes {

  private CorrectionNotes() {}

  /**
   * Returns a line for the worklist.
   *
   * @param corrections those that are obeyed
   * @return the line; empty where there are none
   */
  public static String line(List<Correction> corrections) {
    if (corrections.isEmpty()) {
      return "";
    }
    Correction last = corrections.get(corrections.size() - 1);
    String latest = "no. " + last.number() + " of " + last.entry().at().toLocalDate();
    return corrections.size() == 1
        ? "with 1 correction: " + latest
        : "with " + corrections.size() + " corrections, the latest " + latest;
  }

  /**
   * Returns a line for each.
   *
   * @param corrections those that are obeyed
   */
  public static List<String> lines(List<Correction> corrections) {
    return corrections.stream().map(Correction::words).toList();
  }
}
