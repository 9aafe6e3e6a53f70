// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.proving.report.AccuracyPage;
import org.raftgauge.proving.report.Bench;
import org.raftgauge.proving.report.Section;
import org.raftgauge.proving.report.Sections;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Makes the accuracy page in one go. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    description = {
      "Runs over path-traced shared data (where present), a freshly rendered set and the sample"
          + " photos, scores each and writes ACCURACY.md. Takes twenty minutes or more."
    })
final class ReportCommand implements Callable<Integer> {
  @Option(names = "--out", required = true, description = "Folder for runs, sets and the page.")
  private Path out;

  @Option(
      names = "--docs",
      description = "Also write batch/proving/ACCURACY.md and the README's accuracy table.")
  private boolean docs;

  @Option(
      names = "--root",
      description = "The checkout. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Option(names = "--seed", description = "Of the rendered set. Default: ${DEFAULT-VALUE}.")
  private long seed = 7043;

  @Option(
      names = "--tuned-seed",
      description = "Of the rendered set that rules were found on. Default: ${DEFAULT-VALUE}.")
  private long tunedSeed = 990017;

  @Option(
      names = "--photos",
      description = "Rendered photos; the whole set is 300. Default: ${DEFAULT-VALUE}.")
  private int photos = 72;

  @Option(
      names = "--fillings",
      description = "Only the part on plugs of many kinds, put into batch/proving/ACCURACY.md.")
  private boolean fillings;

  @Override
  public Integer call() throws IOException {
    Files.createDirectories(out);
    Bench bench = new Bench(root, out, seed, tunedSeed, photos);
    if (fillings) {
      AccuracyPage.replace(
          root.resolve("batch/proving/ACCURACY.md"),
          Sections.fillings(bench).begun("Commit " + Commit.of(root) + ".\n\n"));
      return 0;
    }
    String stamp =
        "commit " + Commit.of(root) + ", seed " + seed + ", " + photos + " rendered photos";
    List<Section> sections = Sections.make(bench);
    String page = AccuracyPage.page(stamp, sections);
    Files.writeString(out.resolve("ACCURACY.md"), page);
    if (docs) {
      Files.writeString(root.resolve("batch/proving/ACCURACY.md"), page);
      AccuracyPage.fill(root.resolve("README.md"), AccuracyPage.summary(stamp, sections));
    }
    System.out.print(AccuracyPage.summary(stamp, sections));
    return 0;
  }
}
