// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.LocatedFileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RemoteIterator;
import org.raftgauge.batch.cli.BookWorkplace;
import org.raftgauge.batch.folder.FindPhotos;
import org.raftgauge.batch.folder.PhotoFolder;
import org.raftgauge.batch.run.FoundPhoto;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.core.book.Manifest;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Lists the photos of a folder of this machine, or below a URI that Spark can read. */
public final class ListPhotos {
  /** Taken for the size of a photo of a listing that does not say it. */
  private static final long USUAL_BYTES = 3L << 20;

  private final Configuration settings;

  /**
   * Prepares.
   *
   * @param settings of the file systems
   */
  public ListPhotos(Configuration settings) {
    this.settings = settings;
  }

  /**
   * The photos of a run.
   *
   * @param photos in the order of their paths
   * @param problems what is wrong with folder or manifest; none of it stops the photos
   */
  public record Photos(List<Listed> photos, List<Problem> problems) {

    /** Copies the lists. */
    public Photos {
      photos = List.copyOf(photos);
      problems = List.copyOf(problems);
    }
  }

  /**
   * Lists.
   *
   * @param place folder or URI
   * @param listing file with a path below the place a line, and after a comma its bytes where
   *     known; a large store then need not be listed
   * @return the photos
   * @throws InputException if the place cannot be used at all
   * @throws IOException if the store does not answer
   */
  public Photos in(String place, Optional<java.nio.file.Path> listing)
      throws InputException, IOException {
    if (listing.isEmpty() && !place.contains("://")) {
      return local(java.nio.file.Path.of(place));
    }
    Path root = new Path(place);
    FileSystem files = root.getFileSystem(settings);
    Map<String, Stamp> found =
        listing.isPresent() ? listed(listing.get()) : walked(files, files.makeQualified(root));
    PhotoFolder folder =
        new PhotoFolder(
            java.nio.file.Path.of("."),
            FindPhotos.among(List.copyOf(found.keySet())),
            List.of(),
            List.of());
    FoundPhotos joined = BookWorkplace.joined(folder, manifest(files, root));
    String below = files.makeQualified(root).toUri() + "/";
    List<Listed> photos = new ArrayList<>();
    for (FoundPhoto photo : joined.photos()) {
      Stamp stamp = found.get(photo.facts().photo());
      String uri = new Path(below + photo.facts().photo()).toUri().toString();
      photos.add(
          new Listed(uri, stamp.bytes(), stamp.modifiedMs(), Listed.Facts.of(photo.facts()), ""));
    }
    return new Photos(sorted(photos), joined.problems());
  }

  private record Stamp(long bytes, long modifiedMs) {}

  private static Photos local(java.nio.file.Path folder) throws InputException {
    FoundPhotos found = new BookWorkplace().photos(folder);
    List<Listed> photos = new ArrayList<>();
    for (FoundPhoto photo : found.photos()) {
      Stamp stamp = stamp(photo.file());
      photos.add(
          new Listed(
              photo.file().toAbsolutePath().normalize().toUri().toString(),
              stamp.bytes(),
              stamp.modifiedMs(),
              Listed.Facts.of(photo.facts()),
              ""));
    }
    return new Photos(sorted(photos), found.problems());
  }

  /** A file that cannot be asked is read by a task, which says why. */
  private static Stamp stamp(java.nio.file.Path file) {
    try {
      return new Stamp(Files.size(file), Files.getLastModifiedTime(file).toMillis());
    } catch (IOException e) {
      return new Stamp(0, 0);
    }
  }

  private static List<Listed> sorted(List<Listed> photos) {
    return photos.stream().sorted(java.util.Comparator.comparing(Listed::photo)).toList();
  }

  private static Map<String, Stamp> walked(FileSystem files, Path root)
      throws InputException, IOException {
    Map<String, Stamp> found = new LinkedHashMap<>();
    try {
      RemoteIterator<LocatedFileStatus> walk = files.listFiles(root, true);
      while (walk.hasNext()) {
        LocatedFileStatus file = walk.next();
        String path = root.toUri().relativize(file.getPath().toUri()).getPath();
        found.put(path, new Stamp(file.getLen(), file.getModificationTime()));
      }
    } catch (FileNotFoundException none) {
      throw new InputException(
          List.of(
              new Problem(
                  "PHOTOS " + root, "does not exist", "give the place that holds the photos")));
    }
    return found;
  }

  private static Map<String, Stamp> listed(java.nio.file.Path listing)
      throws InputException, IOException {
    Map<String, Stamp> found = new LinkedHashMap<>();
    int number = 0;
    for (String line : Files.readAllLines(listing, StandardCharsets.UTF_8)) {
      number++;
      int comma = line.lastIndexOf(',');
      boolean sized = comma > 0 && line.substring(comma + 1).matches("\\d{1,12}");
      String path = sized ? line.substring(0, comma) : line;
      if (("/" + path + "/").contains("/../")) {
        throw new InputException(
            List.of(
                new Problem(
                    listing.getFileName() + ":" + number,
                    "\"" + path + "\" leads out of PHOTOS",
                    "write paths below it, with forward slashes")));
      }
      if (!path.isBlank()) {
        found.put(
            path, new Stamp(sized ? Long.parseLong(line.substring(comma + 1)) : USUAL_BYTES, 0));
      }
    }
    return found;
  }

  private static Manifest manifest(FileSystem files, Path root) throws IOException {
    java.nio.file.Path copy = Files.createTempDirectory("raftgauge-manifest");
    java.nio.file.Path file = copy.resolve("manifest.csv");
    try (InputStream in = files.open(new Path(root, "manifest.csv"))) {
      Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
      return Manifest.read(file);
    } catch (FileNotFoundException none) {
      return Manifest.none();
    } finally {
      Files.deleteIfExists(file);
      Files.deleteIfExists(copy);
    }
  }
}
