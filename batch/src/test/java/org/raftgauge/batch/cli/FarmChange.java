// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * Makes a change of a case of the catalogues of tables, histories and calls in a copy of the sound
 * farm: those of {@link BookCase}, and
 *
 * <pre>
 * make FILE: RECIPE       see {@link PhotoRecipe}
 * spoil FILE: CHANGE      changes of {@link PhotoRecipe} to the bytes of a file that is there
 * link FILE: TARGET       a symbolic link
 * folder FILE:            an empty folder
 * sql FILE: STATEMENT     on an SQLite file
 * </pre>
 */
final class FarmChange {

  private FarmChange() {}

  static void make(BookCase each, String change, Path farm) throws IOException {
    String verb = change.substring(0, change.indexOf(' '));
    int colon = change.indexOf(':');
    Path file = farm.resolve(colon < 0 ? "" : change.substring(verb.length() + 1, colon));
    String text = colon < 0 ? "" : change.substring(Math.min(change.length(), colon + 2));
    switch (verb) {
      case "make" -> Files.write(file, PhotoRecipe.bytes(text));
      case "spoil" ->
          Files.write(file, PhotoRecipe.change(Files.readAllBytes(file), text.split(" ", -1)));
      case "link" -> Files.createSymbolicLink(file, Path.of(text));
      case "folder" -> Files.createDirectories(file);
      case "sql" -> sql(file, text);
      default ->
          new BookCase(each.name(), List.of(change), each.exitCode(), each.messages()).apply(farm);
    }
  }

  private static void sql(Path file, String statements) throws IOException {
    try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = database.createStatement()) {
      for (String each : statements.split(";", -1)) {
        statement.execute(each);
      }
    } catch (SQLException e) {
      throw new IOException(e);
    }
  }
}
