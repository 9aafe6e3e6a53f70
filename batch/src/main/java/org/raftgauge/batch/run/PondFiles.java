// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.evening.EveningResult;

/** Writes what an evening came to for other programs: a file for each pond, and their schema. */
final class PondFiles {
  /** The JSON Schema (2020-12) of the files, beside them. */
  static final String SCHEMA = "pond.schema.json";

  private PondFiles() {}

  /**
   * Writes {@code ponds/}.
   *
   * @param folder the run folder
   * @param result what the evening came to
   * @param book the crop book
   * @throws IOException if something cannot be written
   */
  static void write(Path folder, EveningResult result, CropBook book) throws IOException {
    Path ponds = Files.createDirectories(folder.resolve("ponds"));
    try (InputStream schema = PondFiles.class.getResourceAsStream(SCHEMA)) {
      Files.write(ponds.resolve(SCHEMA), schema.readAllBytes());
    }
    for (String pond : ponds(result)) {
      String json = Json.of(new PondJson(result, book, pond).document()) + "\n";
      Files.writeString(ponds.resolve(name(pond)), json);
    }
  }

  private static NavigableSet<String> ponds(EveningResult result) {
    NavigableSet<String> ponds = new TreeSet<>();
    result.verdicts().stream()
        .map(row -> row.place().pond())
        .filter(pond -> !pond.isEmpty())
        .forEach(ponds::add);
    result.worklist().forEach(task -> ponds.add(task.where().pond()));
    return ponds;
  }

  /** Returns a file name of plain letters, the same for no two ponds. */
  static String name(String pond) {
    if (pond.isEmpty()) {
      return "no-pond.json";
    }
    StringBuilder name = new StringBuilder("pond-");
    for (int i = 0; i < pond.length(); i++) {
      char c = pond.charAt(i);
      boolean plain = (c < 128 && Character.isLetterOrDigit(c)) || c == '-';
      name.append(plain ? String.valueOf(c) : String.format("_%04x", (int) c));
    }
    return name.append(".json").toString();
  }
}
