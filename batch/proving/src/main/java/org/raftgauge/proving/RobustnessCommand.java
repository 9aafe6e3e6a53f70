// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.raftgauge.proving.report.AccuracyPage;
import org.raftgauge.proving.report.Section;
import org.raftgauge.proving.robust.BadInputPage;
import org.raftgauge.proving.robust.CoverageSection;
import org.raftgauge.proving.robust.DependencySection;
import org.raftgauge.proving.robust.FuzzSection;
import org.raftgauge.proving.robust.MutationSection;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Words what fuzzing, mutation testing and the catalogues of broken input came to. */
@Command(
    name = "robustness",
    mixinStandardHelpOptions = true,
    description =
        "Rewrites batch/proving/BAD-INPUT.md from the tests' catalogues, and the sections of"
            + " ROBUSTNESS.md of which core/fuzz, core/mutate, or the coverage or publish profile"
            + " left results.")
final class RobustnessCommand implements Callable<Integer> {
  @Option(
      names = "--root",
      description = "The checkout. Default: the current folder.",
      defaultValue = ".")
  private Path root;

  @Override
  public Integer call() throws IOException {
    Path pages = root.resolve("batch/proving");
    Files.writeString(pages.resolve("BAD-INPUT.md"), BadInputPage.of(root));
    String stamp = "commit " + Commit.of(root);
    List<Section> sections = new ArrayList<>();
    if (Files.isDirectory(root.resolve("core/target/fuzz"))) {
      sections.add(FuzzSection.of(root, stamp));
    }
    if (Files.isDirectory(root.resolve("core/target/mutation"))) {
      String page = Files.readString(pages.resolve("ROBUSTNESS.md"));
      sections.add(MutationSection.of(root, page, stamp));
    }
    CoverageSection.of(root, stamp).ifPresent(sections::add);
    DependencySection.of(root.resolve("batch/target/sbom.json")).ifPresent(sections::add);
    for (Section section : sections) {
      AccuracyPage.replace(pages.resolve("ROBUSTNESS.md"), section);
    }
    return 0;
  }
}
