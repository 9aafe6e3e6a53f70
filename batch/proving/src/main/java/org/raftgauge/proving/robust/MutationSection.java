// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.raftgauge.proving.report.Section;

/** Words what {@code core/mutate} left in {@code core/target/mutation}. */
public final class MutationSection {
  private static final Pattern MUTATION = Pattern.compile("<mutation [^>]*status='(\\w+)'");
  private static final Pattern ROW = Pattern.compile("(?m)^\\| `(\\w+)` \\|(?: [^|\\n]+ \\|){5}$");

  private static final String INTRODUCTION =
      "By `core/mutate PACKAGE...`, worded by `batch/proving/prove robustness`. Each mutant is a"
          + " small change of a compiled class (default set of the tool); killed means that a test"
          + " of the same package fails on it, or that it no longer ends. Tests of other packages,"
          + " and those tagged as simulations, which take seconds each, would kill more and are not"
          + " run. The aim is 80 %; a package not listed was not run.\n\n"
          + "| package of core | mutants | killed | no test reaches it | score | at |\n"
          + "| --- | --- | --- | --- | --- | --- |\n";

  private MutationSection() {}

  /**
   * Words the scores: those of the packages that were run last, and of the others as they stand on
   * the page.
   *
   * @param root the checkout
   * @param page the page so far
   * @param stamp what was mutated, such as the commit
   * @return the section "Mutation testing"
   * @throws IOException if a report cannot be read
   */
  public static Section of(Path root, String page, String stamp) throws IOException {
    Map<String, String> rows = new TreeMap<>();
    ROW.matcher(page).results().forEach(row -> rows.put(row.group(1), row.group() + "\n"));
    Path reports = root.resolve("core/target/mutation");
    try (Stream<Path> list = Files.list(reports)) {
      for (Path folder : list.toList()) {
        if (Files.exists(folder.resolve("mutations.xml"))) {
          rows.put(folder.getFileName().toString(), row(folder, stamp));
        }
      }
    }
    return new Section("Mutation testing", INTRODUCTION + String.join("", rows.values()), "");
  }

  private static String row(Path folder, String stamp) throws IOException {
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
        "| `%s` | %d | %d | %d | %.0f %% | %s |\n",
        folder.getFileName(),
        states.size(),
        killed,
        unseen,
        100.0 * killed / Math.max(1, states.size()),
        stamp);
  }
}
