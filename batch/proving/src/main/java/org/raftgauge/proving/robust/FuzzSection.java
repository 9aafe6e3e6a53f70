// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.raftgauge.proving.report.Section;

/** Words what {@code core/fuzz} left in {@code core/target/fuzz}. */
public final class FuzzSection {
  private static final Pattern RUNS = Pattern.compile("stat::number_of_executed_units:\\s+(\\d+)");
  private static final Pattern COVER = Pattern.compile("cov: (\\d+) ft: (\\d+)");
  private static final Pattern DONE = Pattern.compile("Done \\d+ runs in (\\d+) second");

  private FuzzSection() {}

  /**
   * Words the runs.
   *
   * @param root the checkout
   * @param stamp what was fuzzed, such as the commit
   * @return the section "Fuzzing"
   * @throws IOException if a log cannot be read
   */
  public static Section of(Path root, String stamp) throws IOException {
    StringBuilder table =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "Coverage-guided fuzzing by `core/fuzz TARGET SECONDS`, worded by"
                    + " `batch/proving/prove robustness`; %s. Seconds and inputs are the sum of all"
                    + " runs whose log is there, each going on from the corpus of the one before;"
                    + " edges and features are the fuzzer's count of branches of core reached. A"
                    + " finding is an input on which a reader threw, hung or said a problem without"
                    + " place, finding and remedy; inputs that once broke something are kept as"
                    + " `found-...` in the corpus `core/src/test/resources/fuzz`, which"
                    + " `FuzzCorpusTest` replays in every build.%n%n| target | corpus files |"
                    + " seconds | inputs tried | edges | features | findings open |%n| --- | --- |"
                    + " --- | --- | --- | --- | --- |%n",
                stamp));
    for (String target : List.of("book", "csv", "tag", "photo")) {
      table.append(row(root.resolve("core"), target));
    }
    return new Section("Fuzzing", table.toString(), "");
  }

  private static String row(Path core, String target) throws IOException {
    long corpus = count(core.resolve("src/test/resources/fuzz").resolve(target), "");
    Path out = core.resolve("target/fuzz").resolve(target);
    Path log = out.resolve("log.txt");
    if (!Files.exists(log)) {
      return "| " + target + " | " + corpus + " | not run | | | | |\n";
    }
    String text = Files.readString(log);
    String[] cover = last(COVER, text);
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %d | %s | %s | %d |%n",
        target,
        corpus,
        sum(DONE, text),
        sum(RUNS, text),
        cover[0],
        cover[1],
        count(out, "crash-") + count(out, "timeout-") + count(out, "oom-"));
  }

  private static long sum(Pattern pattern, String text) {
    return pattern.matcher(text).results().mapToLong(r -> Long.parseLong(r.group(1))).sum();
  }

  private static String[] last(Pattern pattern, String text) {
    String[] groups = {"?", "?"};
    Matcher matcher = pattern.matcher(text);
    while (matcher.find()) {
      for (int i = 0; i < matcher.groupCount(); i++) {
        groups[i] = matcher.group(i + 1);
      }
    }
    return groups;
  }

  private static long count(Path folder, String prefix) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.filter(f -> f.getFileName().toString().startsWith(prefix))
          .filter(Files::isRegularFile)
          .count();
    }
  }
}
