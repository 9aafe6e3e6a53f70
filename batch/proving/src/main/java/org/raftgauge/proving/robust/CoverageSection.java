// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.proving.report.Section;

/** Words what share of lines and branches the tests reach, from the tables of a coverage run. */
public final class CoverageSection {
  private static final List<String> MODULES = List.of("core", "batch");
  private static final String TABLE = "target/site/jacoco/jacoco.csv";

  private CoverageSection() {}

  /** Lines and branches, reached and not. */
  private record Reached(long lines, long linesMissed, long branches, long branchesMissed) {
    private static final Reached NONE = new Reached(0, 0, 0, 0);

    static Reached of(CSVRecord row) {
      return new Reached(
          Long.parseLong(row.get("LINE_COVERED")),
          Long.parseLong(row.get("LINE_MISSED")),
          Long.parseLong(row.get("BRANCH_COVERED")),
          Long.parseLong(row.get("BRANCH_MISSED")));
    }

    Reached plus(Reached other) {
      return new Reached(
          lines + other.lines,
          linesMissed + other.linesMissed,
          branches + other.branches,
          branchesMissed + other.branchesMissed);
    }

    String row(String name) {
      return String.format(
          Locale.ROOT,
          "| %s | %d | %s | %d | %s |%n",
          name,
          lines + linesMissed,
          share(lines, linesMissed),
          branches + branchesMissed,
          share(branches, branchesMissed));
    }

    private static String share(long reached, long missed) {
      return reached + missed == 0
          ? ""
          : String.format(Locale.ROOT, "%.1f %%", 100.0 * reached / (reached + missed));
    }
  }

  /**
   * Words the shares.
   *
   * @param root the checkout
   * @param stamp what was tested, such as the commit
   * @return the section "Coverage"; nothing where there was no coverage run
   * @throws IOException if a table cannot be read
   */
  public static Optional<Section> of(Path root, String stamp) throws IOException {
    StringBuilder text =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "By `mvn -B -Pcoverage verify` (JaCoCo), worded by `batch/proving/prove robustness`;"
                    + " %s. Each module by its own tests: what batch's tests reach of core is not"
                    + " counted.%n%n| package | lines | reached | branches | reached |%n| --- |"
                    + " ---: | ---: | ---: | ---: |%n",
                stamp));
    boolean any = false;
    for (String module : MODULES) {
      Path table = root.resolve(module).resolve(TABLE);
      if (Files.exists(table)) {
        any = true;
        rows(module, table, text);
      }
    }
    return any ? Optional.of(new Section("Coverage", text.toString(), "")) : Optional.empty();
  }

  private static void rows(String module, Path table, StringBuilder text) throws IOException {
    Map<String, Reached> packages = new TreeMap<>();
    try (CSVParser rows =
        CSVParser.parse(
            Files.newBufferedReader(table),
            CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get())) {
      for (CSVRecord row : rows) {
        packages.merge(row.get("PACKAGE"), Reached.of(row), Reached::plus);
      }
    }
    packages.forEach(
        (name, reached) ->
            text.append(reached.row("`" + name.replace("org.raftgauge.", "") + "`")));
    text.append(
        packages.values().stream().reduce(Reached.NONE, Reached::plus).row("**" + module + "**"));
  }
}
