// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.raftgauge.batch.plot.RaftPlots;
import org.raftgauge.core.evening.EveningResult;
import org.raftgauge.core.report.CurvesTable;
import org.raftgauge.core.report.VerdictsTable;
import org.raftgauge.core.report.WorklistTable;

/** Writes the tables of an evening. */
final class EveningFiles {

  private EveningFiles() {}

  /** Writes verdicts, curves, worklist and the plots of rafts into a folder. */
  static boolean write(Path folder, EveningResult result) throws IOException {
    Files.writeString(folder.resolve("verdicts.csv"), VerdictsTable.csv(result.verdicts()));
    Files.writeString(folder.resolve("curves.csv"), CurvesTable.csv(result.curves()));
    Files.writeString(folder.resolve("worklist.csv"), WorklistTable.csv(result.worklist()));
    return RaftPlots.write(folder.resolve("plots"), result.growth());
  }
}
