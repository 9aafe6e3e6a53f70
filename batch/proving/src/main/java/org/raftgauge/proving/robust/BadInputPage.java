// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.raftgauge.core.problem.PlainLine;

/** Writes the page of the catalogues of broken input, from the catalogues that the tests run. */
public final class BadInputPage {
  /** The catalogues, in the order of the page, with what each is of. */
  private static final Map<String, String> CATALOGUES = catalogues();

  private static final Pattern PARTS = Pattern.compile("(?m)^== ");
  private static final int LONGEST = 200;

  private BadInputPage() {}

  private static Map<String, String> catalogues() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("book", "Crop books");
    all.put("photos", "Photos and photo folders");
    all.put("labels", "Labels: QR tags on drawn boards");
    all.put("csv", "Tables: measures to import, manifests");
    all.put("history", "History databases");
    all.put("arguments", "Calls");
    return all;
  }

  /**
   * Writes the page.
   *
   * @param root the checkout
   * @return the text in Markdown
   * @throws IOException if a catalogue cannot be read
   */
  public static String of(Path root) throws IOException {
    StringBuilder counts = new StringBuilder();
    StringBuilder lists = new StringBuilder();
    int total = 0;
    for (Map.Entry<String, String> catalogue : CATALOGUES.entrySet()) {
      String file = "batch/src/test/resources/bad-input/" + catalogue.getKey() + ".txt";
      List<Case> cases = cases(root.resolve(file));
      total += cases.size();
      counts.append(counts(catalogue, file, cases));
      lists.append("\n## ").append(catalogue.getValue()).append("\n\n");
      lists.append("| case | exit | what is said first |\n| --- | --- | --- |\n");
      cases.forEach(each -> lists.append(each.row()));
    }
    return String.format(
        Locale.ROOT,
        "# Bad input%n%nMade by `batch/proving/prove robustness`, from the catalogues that the tests"
            + " run: each case is the sound farm with one thing wrong, and the message and exit code"
            + " that must come of it to the letter. Photos and labels all lie in one folder beside"
            + " three sound photos, which must measure as they do alone; a call that is refused must"
            + " leave every file as it was. %d cases.%n%n| catalogue | cases | exit 0 | exit 2 | exit"
            + " 3 |%n| --- | --- | --- | --- | --- |%n%s%s",
        total,
        counts,
        lists);
  }

  private static String counts(Map.Entry<String, String> catalogue, String file, List<Case> cases) {
    StringBuilder row = new StringBuilder();
    row.append("| [").append(catalogue.getValue()).append("](../../").append(file).append(") | ");
    row.append(cases.size());
    for (String code : List.of("0", "2", "3")) {
      row.append(" | ").append(cases.stream().filter(c -> c.code().equals(code)).count());
    }
    return row.append(" |\n").toString();
  }

  private static List<Case> cases(Path catalogue) throws IOException {
    List<Case> cases = new ArrayList<>();
    for (String part : PARTS.split(Files.readString(catalogue), -1)) {
      List<String> lines = part.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).toList();
      for (int i = 0; i < lines.size(); i++) {
        if (lines.get(i).matches("exit \\d")) {
          String said = i + 1 < lines.size() ? lines.get(i + 1) : "";
          cases.add(new Case(lines.get(0), lines.get(i).substring(5), said));
        }
      }
    }
    return cases;
  }

  /** A case: its name, exit code and first line said. */
  private record Case(String name, String code, String said) {
    String row() {
      String line = PlainLine.of(said).replace("|", "\\|").replace("<", "&lt;");
      String cut = line.length() > LONGEST ? line.substring(0, LONGEST) + " ..." : line;
      return "| " + name.replace("|", "\\|") + " | " + code + " | " + cut + " |\n";
    }
  }
}
