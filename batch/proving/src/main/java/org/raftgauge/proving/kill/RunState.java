// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.table.CsvScan;

/**
 * What a book remembers and what its results say, without what differs between any two runs: ids of
 * runs, and whether a photo was measured now or before.
 *
 * @param rows of the history, by table and key
 * @param tables the results' tables by name
 */
record RunState(Map<String, List<String>> rows, Map<String, String> tables) {
  private static final Map<String, List<String>> COMPARED =
      Map.of(
          "photos", List.of("sha256"),
          "rafts", List.of("sha256", "place"),
          "sites", List.of("sha256", "place", "site"));
  private static final List<String> OF_A_RUN = List.of("run", "pictured_run");
  private static final List<String> TABLES =
      List.of(
          "photos.csv",
          "sites.csv",
          "rafts.csv",
          "verdicts.csv",
          "curves.csv",
          "worklist.csv",
          "forecast.csv");

  /** Reads it; the work folder is emptied. */
  static RunState of(Place place, Path work) throws IOException {
    new Place(work).clear();
    Files.createDirectories(work);
    Map<String, List<String>> rows = new TreeMap<>();
    try (History history = History.open(place.history())) {
      history.export(work);
    }
    for (Map.Entry<String, List<String>> table : COMPARED.entrySet()) {
      read(work.resolve(table.getKey() + ".csv"), table.getKey(), table.getValue(), rows);
    }
    Map<String, String> tables = new TreeMap<>();
    for (String name : TABLES) {
      tables.put(name, Files.readString(place.out().resolve(name)).replace(",known,", ",used,"));
    }
    return new RunState(rows, tables);
  }

  private static void read(
      Path file, String table, List<String> key, Map<String, List<String>> rows)
      throws IOException {
    List<String> header = List.of(Files.readString(file).lines().findFirst().get().split(",", -1));
    CsvScan.read(
        file,
        header,
        cells -> {
          List<String> said = new ArrayList<>();
          StringBuilder name = new StringBuilder(table);
          for (int i = 0; i < header.size(); i++) {
            if (key.contains(header.get(i))) {
              name.append(' ').append(cells.get(i));
            }
            if (!OF_A_RUN.contains(header.get(i))) {
              said.add(cells.get(i));
            }
          }
          rows.computeIfAbsent(name.toString(), n -> new ArrayList<>())
              .add(String.join("\u0001", said));
        });
  }

  /** Compares with how it should be. */
  Difference from(RunState should) {
    int lost = 0;
    int doubled = 0;
    int changed = 0;
    TreeSet<String> names = new TreeSet<>(should.rows().keySet());
    names.addAll(rows.keySet());
    for (String name : names) {
      List<String> here = rows.getOrDefault(name, List.of());
      List<String> there = should.rows().getOrDefault(name, List.of());
      lost += Math.max(0, there.size() - here.size());
      doubled += Math.max(0, here.size() - there.size());
      changed += here.size() == there.size() && !here.equals(there) ? 1 : 0;
    }
    int tablesChanged =
        (int) TABLES.stream().filter(t -> !tables.get(t).equals(should.tables().get(t))).count();
    return new Difference(lost, doubled, changed + tablesChanged);
  }

  /**
   * How far a state is from what it should be.
   *
   * @param lost rows that are missing
   * @param doubled rows too many
   * @param corrupt rows or tables that say something else
   */
  record Difference(int lost, int doubled, int corrupt) {}

  /** Says whether results stand whole: every file that {@code run.json} lists, and no other. */
  static boolean whole(Path out) throws IOException {
    Path json = out.resolve("run.json");
    if (!Files.isRegularFile(json)) {
      return false;
    }
    String text = Files.readString(json);
    try (Stream<Path> walk = Files.walk(out)) {
      List<Path> files = walk.filter(Files::isRegularFile).filter(f -> !f.equals(json)).toList();
      long listed = text.substring(text.indexOf("\"files\"")).lines().count() - 3;
      return files.size() == listed
          && files.stream()
              .allMatch(
                  f ->
                      text.contains("\"" + out.relativize(f).toString().replace('\\', '/') + "\""));
    }
  }
}
