// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * The catalogues of broken tables ({@code bad-input/csv.txt}), histories ({@code history.txt}) and
 * calls ({@code arguments.txt}): each is the sound farm with one thing wrong and one call, which
 * must say exactly what stands there. A call that is refused leaves every file as it was.
 */
class BadCallCatalogueTest {
  private static final Path FOLDER = Path.of("src", "test", "resources", "bad-input");

  @TempDir private Path scratch;

  @TestFactory
  List<DynamicTest> eachBrokenTableIsSaidWithPlaceAndRemedy() throws IOException {
    return tests("csv.txt");
  }

  @TestFactory
  List<DynamicTest> eachBrokenHistoryIsSaidAndLeftAsItIs() throws IOException {
    return tests("history.txt");
  }

  @TestFactory
  List<DynamicTest> eachWrongCallIsSaidWithItsRemedy() throws IOException {
    return tests("arguments.txt");
  }

  private List<DynamicTest> tests(String catalogue) throws IOException {
    return BookCase.read(FOLDER.resolve(catalogue)).stream()
        .map(each -> DynamicTest.dynamicTest(each.name(), () -> assertSaid(each)))
        .toList();
  }

  private void assertSaid(BookCase each) throws IOException {
    Path farm = Files.createTempDirectory(scratch, "farm");
    Said.copy(FOLDER.resolve("farm"), farm);
    Files.createDirectories(farm.resolve("photos"));
    Files.write(farm.resolve("photos/2026-04-10_B-1.png"), PhotoRecipe.bytes("png 0"));
    String call = "";
    for (String change : each.changes()) {
      if (change.startsWith("call ")) {
        call = change.substring(5);
      } else if (change.startsWith("first ")) {
        assertEquals(0, Said.by(words(change.substring(6), farm)).code(), change);
      } else {
        FarmChange.make(each, change, farm);
      }
    }
    List<String> before = left(farm);
    Said said = Said.by(words(call, farm));
    List<String> expected = new ArrayList<>(List.of("exit " + each.exitCode()));
    expected.addAll(each.messages());
    List<String> actual = new ArrayList<>(List.of("exit " + said.code()));
    actual.addAll(lines(said.err(), farm));
    if (said.code() == 0) {
      lines(said.out(), farm).forEach(line -> actual.add("> " + line));
    } else {
      assertEquals(before, left(farm), "a refused call changed a file");
    }
    assertEquals(String.join("\n", expected), String.join("\n", actual));
  }

  /** Lists the farm, but for the file that says who used the book last. */
  private static List<String> left(Path farm) throws IOException {
    return Said.tree(farm).stream().filter(line -> !line.startsWith("book/run.lock ")).toList();
  }

  /**
   * Splits a call at its blanks, but for those between double quotes; FARM is the farm's folder.
   */
  private static List<String> words(String call, Path farm) {
    List<String> words = new ArrayList<>();
    boolean quoted = false;
    for (String part : call.split("\"", -1)) {
      if (quoted) {
        words.add(BookCase.plain(part).replace("FARM", farm.toString()));
      } else {
        part.lines()
            .flatMap(l -> List.of(l.strip().split(" +", -1)).stream())
            .filter(w -> !w.isEmpty())
            .forEach(w -> words.add(w.replace("FARM", farm.toString())));
      }
      quoted = !quoted;
    }
    return words;
  }

  /** What was said, without what differs from run to run. */
  private static List<String> lines(String said, Path farm) {
    return said.lines()
        .map(line -> line.replace(farm.toString(), "FARM").stripTrailing())
        .map(line -> line.replaceFirst("it is now [0-9: -]+;", "it is now NOW;"))
        .filter(line -> !line.isEmpty())
        .toList();
  }
}
