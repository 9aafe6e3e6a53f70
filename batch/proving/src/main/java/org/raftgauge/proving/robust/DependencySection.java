// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.raftgauge.proving.report.Section;

/** Words the dependencies of a release from its list of parts (SBOM, CycloneDX JSON). */
public final class DependencySection {
  private static final Pattern PART =
      Pattern.compile(
          "\"group\" : \"([^\"]+)\",\\s+\"name\" : \"([^\"]+)\",\\s+\"version\" : \"([^\"]+)\"");
  private static final Pattern LICENCE =
      Pattern.compile(
          "\"license\" : \\{\\s+\"(?:id|name)\" : \"([^\"]+)\"|\"expression\" : \"([^\"]+)\"");

  private DependencySection() {}

  /**
   * Words the list.
   *
   * @param sbom the file
   * @return the section "Dependencies"; nothing where there is no such file
   * @throws IOException if it cannot be read
   */
  public static Optional<Section> of(Path sbom) throws IOException {
    if (!Files.exists(sbom)) {
      return Optional.empty();
    }
    StringBuilder table =
        new StringBuilder(
            "What a release carries, from the list of parts that `mvn -B -Ppublish -DskipTests"
                + " package` writes (`batch/target/sbom.json`), worded by `batch/proving/prove"
                + " robustness`. Known vulnerabilities were not looked up: no advisory data are at"
                + " hand offline; give the same file to a scanner before a release.\n\n"
                + "| part | version | licence |\n"
                + "| --- | --- | --- |\n");
    parts(Files.readString(sbom)).values().forEach(table::append);
    return Optional.of(new Section("Dependencies", table.toString(), ""));
  }

  private static Map<String, String> parts(String json) {
    // The last list: one before it is of the tools that wrote the file.
    int to = json.lastIndexOf("\"dependencies\" :");
    int from = json.lastIndexOf("\"components\" :", to < 0 ? json.length() : to);
    String list = json.substring(Math.max(0, from), to < 0 ? json.length() : to);
    Map<String, String> rows = new TreeMap<>();
    Matcher part = PART.matcher(list);
    List<int[]> places = new ArrayList<>();
    while (part.find()) {
      places.add(new int[] {part.start(), part.end()});
    }
    for (int i = 0; i < places.size(); i++) {
      int end = i + 1 < places.size() ? places.get(i + 1)[0] : list.length();
      Matcher one = PART.matcher(list.substring(places.get(i)[0], end));
      if (one.find()) {
        String name = one.group(1) + ":" + one.group(2);
        rows.put(
            name,
            "| "
                + name
                + " | "
                + one.group(3)
                + " | "
                + licences(list.substring(places.get(i)[1], end))
                + " |\n");
      }
    }
    return rows;
  }

  private static String licences(String part) {
    List<String> names = new ArrayList<>();
    Matcher licence = LICENCE.matcher(part);
    while (licence.find()) {
      names.add(licence.group(1) != null ? licence.group(1) : licence.group(2));
    }
    return names.isEmpty() ? "not said" : String.join(", ", names);
  }
}
