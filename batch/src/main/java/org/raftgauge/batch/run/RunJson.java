// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Writes and recognises {@code run.json}: how a run came about. Whatever differs between two runs
 * over the same photos (times, machine, workers) stands here and in no other file.
 */
final class RunJson {
  static final String FILE = "run.json";

  private RunJson() {}

  /**
   * Writes the file's text.
   *
   * @param run facts in the order they are to stand
   * @param files all files of the folder but this one
   * @return the text
   */
  static String text(Map<String, Object> run, Collection<Path> files) {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("program", "raftgauge");
    all.putAll(run);
    all.put("files", files.stream().map(RunJson::slashed).toList());
    return Json.of(all) + "\n";
  }

  /** Reads the file of a folder; an empty text where there is none of this program's. */
  static String read(Path folder) throws IOException {
    Path file = folder.resolve(FILE);
    String text = Files.isRegularFile(file) ? Files.readString(file) : "";
    return text.startsWith("{\n  \"program\": \"raftgauge\"") ? text : "";
  }

  /** Says whether a run folder is that of a run. */
  static boolean isOf(Path folder, String run) throws IOException {
    return read(folder).contains("\n  \"run\": " + Json.text(run) + ",");
  }

  /** Says whether a file belongs to the folder of a {@code run.json}. */
  static boolean lists(String runJson, Path file) {
    return !runJson.isEmpty()
        && (file.toString().equals(FILE)
            || runJson.contains("\n    " + Json.text(slashed(file)) + ",")
            || runJson.contains("\n    " + Json.text(slashed(file)) + "\n"));
  }

  private static String slashed(Path file) {
    return file.toString().replace('\\', '/');
  }
}
