// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NamesTest {
  private static final String REMEDY =
      "write at most 32 letters, digits, spaces and . - _ ' ( ) & + #, beginning with a letter or"
          + " digit";

  @TempDir private Path folder;

  private static List<String> faults(String name) {
    List<String> faults = new ArrayList<>();
    Names.check(name, (found, remedy) -> faults.addAll(List.of(found, remedy)));
    return faults;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "R1",
        "DR-0401",
        "7",
        "red oak (late) #2",
        "Vent d'Est & Co.",
        "a_b+c",
        "M\u00fcller",
        "Mu\u0308ller",
        "\u7b4f1", // Chinese
        "\u0440\u0430\u0444\u0442 4", // Cyrillic
        "\u0628\u0633\u062a\u200c\u0647\u0627", // Persian with a joiner
        "\u0915\u094d\u0937", // Devanagari with a sign of its own
        "\u0e41\u0e1e-\u0e52", // Thai with a Thai digit
        "\ud83a\udd00x" // Adlam, outside the basic plane
      })
  void namesOfEveryScriptAreTaken(String name) {
    assertEquals(List.of(), faults(name));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "=cmd()|it begins with \"=\"",
        "+1|it begins with \"+\"",
        "-x|it begins with \"-\"",
        "@x|it begins with \"@\"",
        "../x|it begins with \".\"",
        "_x|it begins with \"_\"",
        "<script>|it begins with \"<\"",
        "a<b|\"<\" may not stand in it",
        "a/b|\"/\" may not stand in it",
        "a\\b|\"\\\" may not stand in it",
        "a;b|\";\" may not stand in it",
        "a%00|\"%\" may not stand in it",
        "a\"b|\"\"\" may not stand in it",
        "a{b|\"{\" may not stand in it",
        "``|it is blank"
      })
  void nameThatAProgramCouldTakeForSomethingElseIsRefused(String name, String fault) {
    assertEquals(List.of("\"" + name + "\" is not a name: " + fault, REMEDY), faults(name));
  }

  @Test
  void whatDoesNotShowInANameIsWrittenOut() {
    assertEquals(
        "\"R\\u001b[2J\" is not a name: \"\\u001b\" may not stand in it",
        faults("R\u001b[2J").get(0));
    assertEquals(
        "\"R\\u202e1\" is not a name: \"\\u202e\" may not stand in it", faults("R\u202e1").get(0));
    assertEquals(
        "\"R\\u000aX\" is not a name: \"\\u000a\" may not stand in it", faults("R\nX").get(0));
    assertEquals(
        "\"R\\u00a01\" is not a name: \"\\u00a0\" may not stand in it", faults("R\u00a01").get(0));
  }

  @Test
  void nameOfUpTo32CharactersIsTakenWhateverItsScript() {
    assertEquals(List.of(), faults("a".repeat(32)));
    // Each letter of Adlam takes two units of UTF-16.
    assertEquals(List.of(), faults("\ud83a\udd00".repeat(32)));
    assertEquals(
        "\"" + "a".repeat(33) + "\" is not a name: it has 33 characters",
        faults("a".repeat(33)).get(0));
    assertEquals(
        "\"" + "a".repeat(40) + "...\" is not a name: it has 9999 characters",
        faults("a".repeat(9999)).get(0));
  }

  @Test
  void everyKindOfNameOfABookIsChecked() {
    BookFolder book =
        BookFolder.in(folder)
            .change("crops.yaml", "lettuce:", "'=lettuce':")
            .change(
                "crops.yaml", "mean_to_top: 0.6}", "mean_to_top: 0.6}\n    varieties: {'@x': {}}")
            .change("layouts.yaml", "strip:", "'<strip>':")
            .change("stations/over-pond.yaml", "name: left", "name: +left")
            .with("stations/-x.yaml", "kind: passing\n")
            .plantings(
                """
                =R,P1,1,basil,,small,,,2026-04-06,,,
                R8,=P,1,basil,,small,,,2026-04-06,,,
                R7,P1,=1,basil,,small,,,2026-04-06,,,
                R6,P1,1,basil,=v,small,,,2026-04-06,,,
                """);
    List<String> named =
        book.problems().stream()
            .filter(problem -> problem.contains("is not a name: it begins with"))
            .map(problem -> problem.substring(0, problem.indexOf(" is not")))
            .toList();
    assertEquals(
        List.of(
            "layouts.yaml:5:3: layouts.<strip>: \"<strip>\"",
            "crops.yaml:5:3: crops.=lettuce: \"=lettuce\"",
            "stations/-x.yaml: \"-x\"",
            "stations/over-pond.yaml:7:12: slots[0].name: \"+left\"",
            "plantings.csv:5: column raft: \"=R\"",
            "plantings.csv:6: column pond: \"=P\"",
            "plantings.csv:7: column berth: \"=1\"",
            "plantings.csv:8: column variety: \"=v\""),
        named);
  }
}
