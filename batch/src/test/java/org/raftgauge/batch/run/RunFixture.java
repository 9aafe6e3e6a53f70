// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.fixture.HandMadeWorkplace;
import org.raftgauge.batch.fixture.SilentProgress;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.problem.InputException;

/** Runs over photos that are texts, measured by a hand-made measurer. */
final class RunFixture {
  static final String EVENING = " at=2026-04-11T18:00:00+01:00";

  private final Path folder;

  final HandMadeFarm farm = new HandMadeFarm("R1", "R2", "R3");
  final SilentProgress progress = new SilentProgress();
  HandMadeMeasurer measurer = new HandMadeMeasurer("s");
  EnumSet<RunPictures.Kind> pictures = EnumSet.of(RunPictures.Kind.OVERLAY);
  int workers = 2;

  RunFixture(Path folder) throws IOException {
    this.folder = folder;
    Files.createDirectories(folder.resolve("book"));
    Files.createDirectories(folder.resolve("photos"));
  }

  RunSummary run(String out) throws InputException, IOException {
    Tools tools = new Tools(farm, measurer, new RunPictures(farm, pictures), progress);
    RunRequest request =
        new RunRequest(
            folder.resolve("photos"),
            folder.resolve("book"),
            Optional.ofNullable(out).map(folder::resolve),
            workers,
            Duration.ofMillis(50),
            OffsetDateTime.parse("2026-04-12T07:00:00+01:00").plusNanos(System.nanoTime()));
    return RunFolder.run(request, HandMadeWorkplace.find(folder.resolve("photos")), tools);
  }

  /** Returns the areas of a photo's sites as the last run wrote them. */
  String areas(String photo) throws IOException {
    StringBuilder areas = new StringBuilder();
    for (String row : text("out/sites.csv").split("\r\n", -1)) {
      String[] cells = row.split(",", -1);
      if (cells[0].equals(photo)) {
        areas.append(cells[7]).append('=').append(cells[11]).append(' ');
      }
    }
    return areas.toString();
  }

  List<String> settled() throws Exception {
    List<String> rows = new ArrayList<>();
    String url = "jdbc:sqlite:" + folder.resolve("book/history.db");
    try (var database = java.sql.DriverManager.getConnection(url);
        var statement = database.createStatement();
        var row =
            statement.executeQuery(
                "SELECT photo, status, settled FROM photos JOIN rafts USING (sha256)"
                    + " ORDER BY photo")) {
      while (row.next()) {
        rows.add(row.getString(1) + " " + row.getString(2) + " " + row.getString(3));
      }
    }
    return rows;
  }

  History history() throws IOException {
    return History.open(folder.resolve("book/history.db"));
  }

  void photo(String name, String text) throws IOException {
    Path file = folder.resolve("photos").resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  String text(String name) throws IOException {
    return Files.readString(folder.resolve(name));
  }

  Map<String, String> files(String name) throws IOException {
    Map<String, String> files = new TreeMap<>();
    Path root = folder.resolve(name);
    try (var walk = Files.walk(root)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        String text =
            new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
        files.put(root.relativize(file).toString().replace('\\', '/'), text);
      }
    }
    return files;
  }

  static List<String> names(Path folder) throws IOException {
    try (var list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
