// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.proving.accuracy.Answer;
import org.raftgauge.proving.accuracy.ScoreFiles;
import org.raftgauge.proving.accuracy.ScoreRun;
import org.raftgauge.proving.accuracy.TruthSite;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Scores runs against the truth. */
@Command(
    name = "accuracy",
    mixinStandardHelpOptions = true,
    description = "Scores sites.csv files against a truth file.")
final class AccuracyCommand implements Callable<Integer> {
  @Option(names = "--truth", required = true, description = "truth.csv of a rendered set.")
  private Path truth;

  @Option(
      names = "--sites",
      required = true,
      description = "sites.csv of a run; may be given several times, one table each.")
  private List<Path> sites;

  @Option(
      names = "--by",
      description = "Column of the truth file to group by. Default: ${DEFAULT-VALUE}.")
  private String by = "condition";

  @Option(names = "--out", required = true, description = "Folder for accuracy.md and .csv.")
  private Path out;

  @Override
  public Integer call() throws IOException {
    List<TruthSite> known = TruthSite.read(truth, by);
    List<ScoreFiles.Method> methods = new ArrayList<>();
    for (Path file : sites) {
      String name = file.toString().replace('\\', '/');
      methods.add(new ScoreFiles.Method(name, ScoreRun.score(known, Answer.read(file))));
    }
    ScoreFiles.write(out, methods);
    System.out.print(ScoreFiles.markdown(methods));
    return 0;
  }
}
