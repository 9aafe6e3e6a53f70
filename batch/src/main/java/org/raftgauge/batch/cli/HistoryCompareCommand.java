// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.raftgauge.batch.run.RemeasuredTable;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Remeasured;
import org.raftgauge.core.problem.InputException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Compares measures with those before. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    header = "Compares measures with those of an earlier program or book.",
    description = {
      "%nA photo is measured anew when it is run again after the program or what it was",
      "measured by has changed; the measure before is kept. This tells both, site by",
      "site."
    },
    synopsisHeading = "%nUsage:%n  ",
    optionListHeading = "%nOptions:%n",
    footer = {
      "",
      "Example:",
      "  raftgauge run photos/april --book my-farm",
      "  raftgauge history compare --book my-farm --out compare.csv"
    })
final class HistoryCompareCommand implements Callable<Integer> {
  private static final int MOST_LINES = 5;

  private final Console console;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Write every site to a table, over one that may be there.")
  private Path out;

  @Mixin private HistoryOptions options;

  HistoryCompareCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws InputException, IOException {
    List<Remeasured> sites;
    try (History history = options.open(console)) {
      sites = history.remeasured();
    }
    lines(sites).forEach(console.out()::println);
    if (out != null) {
      RemeasuredTable.write(sites, out);
      console.out().println("Each site: " + out);
    }
    return ExitCode.DONE;
  }

  private static List<String> lines(List<Remeasured> sites) {
    if (sites.isEmpty()) {
      return List.of("No photo was measured by two programs or books");
    }
    List<Remeasured> sorted =
        sites.stream()
            .filter(s -> s.change().isPresent())
            .sorted(
                Comparator.<Remeasured>comparingDouble(s -> Math.abs(s.change().getAsDouble()))
                    .reversed())
            .toList();
    long photos = sites.stream().map(Remeasured::sha256).distinct().count();
    List<String> lines = new java.util.ArrayList<>();
    lines.add(
        photos
            + (photos == 1 ? " photo" : " photos")
            + " measured by two, "
            + sites.size()
            + " sites, of which "
            + sorted.size()
            + " have leaf in both");
    if (!sorted.isEmpty()) {
      lines.add("Middle change of area " + percent(sorted.get(sorted.size() / 2)) + ", largest:");
      sorted.stream().limit(MOST_LINES).map(s -> "  " + line(s)).forEach(lines::add);
    }
    return lines;
  }

  private static String line(Remeasured site) {
    return String.format(
        Locale.ROOT,
        "%s %s %s: %.2f to %.2f cm2, %s",
        site.photo(),
        site.raft(),
        site.site(),
        site.before().areaCm2().getAsDouble(),
        site.now().areaCm2().getAsDouble(),
        percent(site));
  }

  private static String percent(Remeasured site) {
    return String.format(Locale.ROOT, "%+.1f %%", 100 * site.change().getAsDouble());
  }
}
