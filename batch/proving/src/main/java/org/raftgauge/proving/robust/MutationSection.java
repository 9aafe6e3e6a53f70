// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.raftgauge.proving.report.Section;

/** Words what {@code core/mutate} left in {@code core/target/mutation}. */
public final class MutationSection {
  private static final Pattern MUTATION = Pattern.compile("<mutation [^>]*status='(\\w+)'");

  private MutationSection() {}

  /**
   * Words the scores.
   *
   * @param root the checkout
   * @param stamp what was mutated, such as the commit
   * @return the section "Mutation testing"
   * @throws IOException if a report cannot be read
   */
  public static Section of(Path root, String stamp) throws IOException {
    StringBuilder table =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "By `core/mutate PACKAGE...`, worded by `batch/proving/prove robustness`; %s. Each"
                    + " mutant is a small change of a compiled class (default set of the tool);"
                    + " killed means that a test of the same package fails on it, or that it no"
                    + " longer ends. Tests of other packages, and those tagged as simulations,"
                    + " which take seconds each, would kill more and are not run. The aim is 80 %%;"
                    + " a package not listed was not run.%n%n| package of core | mutants | killed |"
                    + " no test reaches it | score |%n| --- | --- | --- | --- | --- |%n",
                stamp));
    Path reports = root.resolve("core/target/mutation");
    try (Stream<Path> list = Files.isDirectory(reports) ? Files.list(reports) : Stream.empty()) {
      for (Path folder : list.sorted().toList()) {
        if (Files.exists(folder.resolve("mutations.xml"))) {
          table.append(row(folder));
        }
      }
    }
    return new Section("Mutation testing", table.toString(), "");
  }

  private static String row(Path folder) throws IOException {
    List<String> states =
        MUTATION
            .matcher(Files.readString(folder.resolve("mutations.xml")))
            .results()
            .map(found -> found.group(1))
            .toList();
    long killed =
        states.stream()
            .filter(s -> List.of("KILLED", "TIMED_OUT", "MEMORY_ERROR").contains(s))
            .count();
    long unseen = states.stream().filter("NO_COVERAGE"::equals).count();
    return String.format(
        Locale.ROOT,
        "| `%s` | %d | %d | %d | %.0f %% |%n",
        folder.getFileName(),
        states.size(),
        killed,
        unseen,
        100.0 * killed / Math.max(1, states.size()));
  }
}
