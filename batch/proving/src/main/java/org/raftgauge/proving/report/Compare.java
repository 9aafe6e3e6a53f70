// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.raftgauge.proving.accuracy.Answer;
import org.raftgauge.proving.accuracy.ScoreFiles;
import org.raftgauge.proving.accuracy.ScoreFiles.Method;
import org.raftgauge.proving.accuracy.ScoreRun;
import org.raftgauge.proving.accuracy.TruthSite;

/**
 * Scores the program and the plain script on the same sites.
 *
 * @param ours the program
 * @param plain the plain script
 */
record Compare(Method ours, Method plain) {

  /**
   * Scores two {@code sites.csv} files.
   *
   * @param truth the sites, with their looks
   * @param sites of the program's run
   * @param plain of the plain script
   * @return both scored
   * @throws IOException if a file cannot be read
   */
  static Compare on(List<TruthSite> truth, Path sites, Path plain) throws IOException {
    return new Compare(
        new Method("Raftgauge", ScoreRun.score(truth, Answer.read(sites))),
        new Method("Plain script", ScoreRun.score(truth, Answer.read(plain))));
  }

  /** Writes the plain script's lines as a file. */
  static Path write(Path file, List<String> lines) throws IOException {
    Files.createDirectories(file.getParent());
    return Files.writeString(file, String.join("\r\n", lines) + "\r\n");
  }

  /** Returns the table of both side by side, then each in full. */
  String tables() {
    return SummaryRows.HEAD
        + SummaryRows.of(ours, plain)
        + "\n"
        + ScoreFiles.markdown(List.of(ours, plain));
  }

  /** Returns the row of a look under another name. */
  String row(String name, String look) {
    return SummaryRows.row(name, SummaryRows.find(ours, look), SummaryRows.find(plain, look));
  }
}
