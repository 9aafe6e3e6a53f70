// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.dataset;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/**
 * A folder of Parquet files on any file system or object store. What it holds is said by the newest
 * file in {@code commits}: a run writes its files under names of its own and then that one small
 * file, so readers see all of a run or nothing, whatever the store can rename.
 */
public final class DatasetFolder {
  private static final String COMMITS = "commits";
  private static final String MEASURES = "measures";
  private static final String TABLES = "tables";
  private static final Set<String> OURS = Set.of(COMMITS, MEASURES, TABLES);

  private final Path root;
  private final FileSystem files;
  private Commit commit;

  private DatasetFolder(Path root, FileSystem files) {
    this.root = root;
    this.files = files;
  }

  /**
   * Opens a dataset to write to, and makes it where there is none.
   *
   * @param place folder or URI
   * @param settings of the file system
   * @return the dataset
   * @throws InputException if something else is there
   * @throws IOException if it cannot be read
   */
  public static DatasetFolder open(String place, Configuration settings)
      throws InputException, IOException {
    Path root = new Path(place);
    DatasetFolder folder = new DatasetFolder(root, root.getFileSystem(settings));
    folder.commit = folder.newest();
    if (folder.commit.number() == 0) {
      for (FileStatus file : folder.list(root)) {
        if (!OURS.contains(file.getPath().getName())) {
          throw new InputException(
              List.of(
                  new Problem(
                      "OUT " + place,
                      "holds \"" + file.getPath().getName() + "\" and is no dataset",
                      "give a new or empty folder, or that of an earlier run")));
        }
      }
    }
    return folder;
  }

  /**
   * Opens a dataset to read.
   *
   * @param place folder or URI
   * @param settings of the file system
   * @return the dataset
   * @throws InputException if no run has published anything there
   * @throws IOException if it cannot be read
   */
  public static DatasetFolder read(String place, Configuration settings)
      throws InputException, IOException {
    DatasetFolder folder = open(place, settings);
    if (folder.commit.tables().isEmpty()) {
      throw new InputException(
          List.of(
              new Problem(
                  "DATASET " + place,
                  "holds no published run",
                  "give the folder that --out of run --engine spark named")));
    }
    return folder;
  }

  /** Returns what the dataset holds. */
  public Commit commit() {
    return commit;
  }

  /** Returns the place of a round of measures. */
  public String round(String folder) {
    return new Path(new Path(root, MEASURES), folder).toString();
  }

  /** Returns the place of a report of a run. */
  public String table(String run, String table) {
    return new Path(new Path(new Path(root, TABLES), run), table).toString();
  }

  /**
   * Says whether the dataset holds rows of a report.
   *
   * @param table its name
   * @return false where there is nothing to read
   * @throws IOException if it cannot be told
   */
  public boolean hasRows(String table) throws IOException {
    return list(new Path(table(commit.tables(), table))).stream()
        .anyMatch(f -> f.getPath().getName().contains("="));
  }

  /**
   * Adds a round of measures, which stands in its place.
   *
   * @param stamp the run
   * @param folder below {@code measures}
   * @throws IOException if it cannot, or another run was faster
   */
  public void addRound(RunStamp stamp, String folder) throws IOException {
    write(commit.with(stamp, new Commit.Round(folder, stamp.version(), stamp.code())));
  }

  /**
   * Publishes a run's reports, which stand in their places, in the place of the earlier ones.
   *
   * @param stamp the run
   * @param reports which they are
   * @throws IOException if it cannot, or another run was faster
   */
  public void publish(RunStamp stamp, Commit.Reports reports) throws IOException {
    write(commit.with(stamp, reports));
  }

  /**
   * Removes what no commit names: what killed runs left, and reports that were replaced.
   *
   * @param running the run at work, whose files stay
   * @throws IOException if it cannot
   */
  public void clear(String running) throws IOException {
    Set<String> named = new HashSet<>();
    commit.rounds().forEach(r -> named.add(r.folder()));
    for (FileStatus round : list(new Path(root, MEASURES))) {
      String name = round.getPath().getName();
      if (!named.contains(name) && !name.startsWith(running)) {
        files.delete(round.getPath(), true);
      }
    }
    for (FileStatus run : list(new Path(root, TABLES))) {
      String name = run.getPath().getName();
      if (!name.equals(commit.tables()) && !name.equals(running)) {
        files.delete(run.getPath(), true);
      }
    }
  }

  private void write(Commit next) throws IOException {
    Path place = new Path(new Path(root, COMMITS), name(next.number()));
    Path part = new Path(new Path(root, COMMITS), ".part-" + next.run());
    if (newest().number() != commit.number() || files.exists(place)) {
      throw new IOException(
          "another run has written to "
              + root
              + " meanwhile; nothing of it is lost: run again when it has ended");
    }
    try (OutputStream out = files.create(part, true)) {
      out.write(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsBytes(next));
    }
    if (!files.rename(part, place)) {
      throw new IOException(place + " cannot be written");
    }
    commit = next;
  }

  private Commit newest() throws IOException {
    List<String> names = new ArrayList<>();
    for (FileStatus file : list(new Path(root, COMMITS))) {
      String name = file.getPath().getName();
      if (name.matches("\\d{8}\\.json")) {
        names.add(name);
      }
    }
    if (names.isEmpty()) {
      return Commit.NONE;
    }
    names.sort(null);
    Path newest = new Path(new Path(root, COMMITS), names.get(names.size() - 1));
    try (InputStream in = files.open(newest)) {
      return new ObjectMapper().readValue(in, Commit.class);
    }
  }

  private static String name(int number) {
    return String.format(Locale.ROOT, "%08d.json", number);
  }

  private List<FileStatus> list(Path folder) throws IOException {
    try {
      return List.of(files.listStatus(folder));
    } catch (FileNotFoundException none) {
      return List.of();
    }
  }
}
