// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * The catalogues of broken photos and of hostile labels, {@code bad-input/photos.txt} and {@code
 * labels.txt}: all lie in one folder beside three sound photos, and one run goes over them. Each
 * must say exactly what stands there, the sound photos must measure as without the others, and
 * nothing may be written outside of the places of a run.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BadPhotoCatalogueTest {
  private static final Path FOLDER = Path.of("src", "test", "resources", "bad-input");
  private static final List<String> SOUND = List.of("B-1", "B-2", "B-3");

  @TempDir private static Path scratch;
  private final TreeMap<String, CSVRecord> rows = new TreeMap<>();
  private JsonNode run;
  private Said said;

  @BeforeAll
  void runOverAllOfThem() throws IOException {
    for (String name : List.of("alone", "farm")) {
      Said.copy(FOLDER.resolve("farm"), scratch.resolve(name));
      soundPhotos(scratch.resolve(name));
    }
    run(scratch.resolve("alone"));
    for (BookCase each : cases()) {
      PhotoFolderCase.make(each, scratch.resolve("farm/photos"));
    }
    said = run(scratch.resolve("farm"));
    for (CSVRecord row : csv("farm/out/photos.csv")) {
      // An apostrophe guards what a spreadsheet would take for a formula.
      rows.put(row.get("photo").replaceFirst("^'(?==)", ""), row);
    }
    run = new ObjectMapper().readTree(scratch.resolve("farm/out/run.json").toFile());
  }

  private static Said run(Path farm) {
    return Said.by(
        List.of(
            "run",
            farm.resolve("photos").toString(),
            "--book=" + farm.resolve("book"),
            "--out=" + farm.resolve("out")));
  }

  private static void soundPhotos(Path farm) throws IOException {
    for (int i = 0; i < SOUND.size(); i++) {
      Path file = farm.resolve("photos/2026-04-10_" + SOUND.get(i) + ".png");
      Files.createDirectories(file.getParent());
      Files.write(file, PhotoRecipe.bytes("png " + i));
    }
  }

  private static List<BookCase> cases() throws IOException {
    List<BookCase> cases = new ArrayList<>(BookCase.read(FOLDER.resolve("photos.txt")));
    cases.addAll(BookCase.read(FOLDER.resolve("labels.txt")));
    return cases;
  }

  @TestFactory
  List<DynamicTest> eachBrokenPhotoIsARowWithReasonAndRemedy() throws IOException {
    return cases().stream()
        .map(each -> DynamicTest.dynamicTest(each.name(), () -> assertSaid(each)))
        .toList();
  }

  private void assertSaid(BookCase each) {
    List<String> expected = new ArrayList<>(List.of("exit " + each.exitCode()));
    expected.addAll(each.messages());
    List<String> actual = new ArrayList<>(List.of("exit " + said.code()));
    String photo = PhotoFolderCase.photo(each);
    CSVRecord row = rows.get(photo);
    actual.add(row == null ? "no row" : line(row));
    for (JsonNode note : run.get("notes")) {
      if (note.textValue().startsWith(photo + ":")) {
        actual.add("note " + note.textValue().substring(photo.length() + 2));
      }
    }
    assertEquals(String.join("\n", expected), String.join("\n", actual));
  }

  private static String line(CSVRecord row) {
    StringBuilder line = new StringBuilder(row.get("status"));
    for (String column : List.of("rafts", "reason", "remedy", "clock_doubt")) {
      if (!row.get(column).isEmpty()) {
        line.append("; ").append(column).append(": ").append(row.get(column));
      }
    }
    return line.toString();
  }

  @Test
  void theSoundPhotosMeasureAsWithoutTheOthers() throws IOException {
    for (String table : List.of("photos.csv", "sites.csv", "rafts.csv")) {
      List<String> alone = soundRows("alone/out/" + table);
      assertTrue(alone.size() >= SOUND.size(), table);
      assertEquals(alone, soundRows("farm/out/" + table), table);
    }
  }

  @Test
  void nothingIsWrittenElsewhereAndThePageCarriesNoScript() throws IOException {
    try (Stream<Path> top = Files.list(scratch)) {
      assertEquals(
          List.of("alone", "farm"), top.map(p -> p.getFileName().toString()).sorted().toList());
    }
    try (Stream<Path> farm = Files.list(scratch.resolve("farm"))) {
      assertEquals(
          List.of("book", "out", "photos", "sites.csv"),
          farm.map(p -> p.getFileName().toString()).sorted().toList());
    }
    String page = Files.readString(scratch.resolve("farm/out/report.html"));
    assertTrue(!page.contains("<script>alert"), "a script of a tag or name is in the page");
    assertTrue(!page.contains("<img src=x"), "an element of a tag or name is in the page");
    for (CSVRecord row : csv("farm/out/photos.csv")) {
      for (String cell : row) {
        assertTrue(!cell.matches("[=+@\t\r].*"), "a formula stands in a cell: " + cell);
      }
    }
  }

  private List<String> soundRows(String file) throws IOException {
    return csv(file).stream()
        .filter(
            row ->
                SOUND.stream().anyMatch(s -> row.get("photo").equals("2026-04-10_" + s + ".png")))
        .map(row -> String.join("|", row.toList()))
        .toList();
  }

  private List<CSVRecord> csv(String file) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    return format.parse(new StringReader(Files.readString(scratch.resolve(file)))).getRecords();
  }
}
