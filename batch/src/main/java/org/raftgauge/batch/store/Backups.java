// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.sqlite.SQLiteConnection;

/**
 * Copies of a history in the folder {@code backups} beside it: one of each day on which a run was
 * published, the latest three days; and one of each older version of the file, for good. Copies are
 * made by SQLite's online backup, so that a run may be at work meanwhile.
 */
public final class Backups {
  private static final String FOLDER = "backups";
  private static final int DAYS = 3;
  private static final String DAILY = "history-\\d{4}-\\d\\d-\\d\\d\\.db";

  private final Path folder;

  private Backups(Path folder) {
    this.folder = folder;
  }

  /**
   * Finds the backups of a history.
   *
   * @param history {@code history.db}
   */
  public static Backups beside(Path history) {
    return new Backups(history.toAbsolutePath().resolveSibling(FOLDER));
  }

  /** Returns the copies there are, the latest written first. */
  public List<Path> all() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> list = Files.list(folder)) {
      return list.filter(p -> p.getFileName().toString().matches("history-.*\\.db"))
          .sorted(Comparator.comparing(Backups::written).reversed())
          .toList();
    }
  }

  /** Returns the copy that was written last. */
  public Optional<Path> latest() throws IOException {
    return all().stream().findFirst();
  }

  /**
   * Looks through a copy for damage.
   *
   * @param backup the copy, of whatever version
   * @return what is wrong, a line each; nothing where it is whole
   * @throws IOException if it cannot be read at all
   */
  public static List<String> check(Path backup) throws IOException {
    try (Connection database = Database.connect(backup)) {
      return CheckHistory.pragma(database, "integrity_check").stream()
          .filter(line -> !line.equals("ok"))
          .toList();
    } catch (SQLException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  /** Writes the copy of a day, in the place of an earlier one of the day. */
  Path write(Connection database, LocalDate day, Steps steps) throws SQLException, IOException {
    Path place = folder.resolve("history-" + day + ".db");
    steps.before(Step.WRITE_BACKUP);
    Path draft = draft(database);
    steps.before(Step.MOVE_BACKUP);
    Files.move(draft, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    thin(place);
    return place;
  }

  /** Keeps a copy of a file of an older version; one that is there already stays. */
  void keepOld(Connection database, int version) throws SQLException, IOException {
    Path place = folder.resolve("history-schema-" + version + ".db");
    for (int n = 2; Files.exists(place); n++) {
      place = folder.resolve("history-schema-" + version + "-" + n + ".db");
    }
    Files.move(draft(database), place, StandardCopyOption.ATOMIC_MOVE);
  }

  private Path draft(Connection database) throws SQLException, IOException {
    Files.createDirectories(folder);
    Path draft = folder.resolve(".writing.db");
    Files.deleteIfExists(draft);
    copy(database, draft);
    return draft;
  }

  /**
   * Copies an open history to a file, on the disk when this returns.
   *
   * @param database the open history
   * @param to a file that is not there
   */
  static void copy(Connection database, Path to) throws SQLException, IOException {
    try {
      database
          .unwrap(SQLiteConnection.class)
          .getDatabase()
          .backup("main", to.toAbsolutePath().toString(), null);
      try (FileChannel channel = FileChannel.open(to, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
    } catch (SQLException | IOException e) {
      Files.deleteIfExists(to);
      throw e;
    }
  }

  /** Removes copies of days beyond the latest, by name; never the one just written. */
  private void thin(Path fresh) throws IOException {
    List<Path> daily =
        all().stream()
            .filter(p -> p.getFileName().toString().matches(DAILY) && !p.equals(fresh))
            .sorted(Comparator.comparing(Path::getFileName).reversed())
            .toList();
    for (Path old : daily.subList(Math.min(DAYS - 1, daily.size()), daily.size())) {
      Files.deleteIfExists(old);
    }
  }

  private static FileTime written(Path file) {
    try {
      return Files.getLastModifiedTime(file);
    } catch (IOException e) {
      return FileTime.fromMillis(0);
    }
  }
}
