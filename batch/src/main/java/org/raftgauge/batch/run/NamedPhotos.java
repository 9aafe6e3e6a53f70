// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.core.problem.InputException;

/**
 * Finds the photos that a person names: by the path as in {@code photos.csv}, by the first digits
 * of the hash, by any path of the file itself (its bytes tell it), or by the end of its path, such
 * as the file's name, where that is one photo's alone. A name of a folder means all photos in it.
 */
final class NamedPhotos {
  private static final int MOST_NAMED = 6;

  private NamedPhotos() {}

  /**
   * Finds them.
   *
   * @param history what was measured
   * @param names the names
   * @return the photos, in the order of the names
   * @throws InputException if a name is none or several photos'
   * @throws IOException if the history cannot be read
   */
  static List<Kept> of(History history, List<String> names) throws InputException, IOException {
    List<Kept> photos = new ArrayList<>();
    for (String name : names) {
      photos.addAll(of(history, name));
    }
    return photos;
  }

  private static List<Kept> of(History history, String name) throws InputException, IOException {
    String path = path(name);
    List<Kept> found = history.named(path);
    if (found.isEmpty()) {
      found = byBytes(history, name);
    }
    if (found.isEmpty()) {
      found = history.endingIn(path);
    }
    if (found.isEmpty()) {
      throw none(name, history.named(path + "/"));
    }
    if (found.size() > 1 && !path.endsWith("/")) {
      throw several(name, found);
    }
    return found;
  }

  private static InputException none(String name, List<Kept> below) {
    return below.isEmpty()
        ? AmendHistory.wrong(
            name,
            "is no photo of the history",
            "write its path or its name as in photos.csv, a folder with a slash at its end, or the"
                + " first 8 or more digits of its sha256")
        : AmendHistory.wrong(
            name,
            "is a folder of " + below.size() + (below.size() == 1 ? " photo" : " photos"),
            "write " + name + "/ if all of them are meant");
  }

  private static InputException several(String name, List<Kept> found) {
    boolean alike = found.stream().map(k -> k.measure().photo()).distinct().count() == 1;
    String which =
        found.stream()
            .limit(MOST_NAMED)
            .map(k -> alike ? k.measure().sha256().substring(0, 12) : k.measure().photo())
            .collect(Collectors.joining(", "));
    String more = found.size() > MOST_NAMED ? ", ..." : "";
    return AmendHistory.wrong(
        name,
        "is the name of " + found.size() + " photos" + (alike ? " of other bytes" : ""),
        alike
            ? "write the first digits of the sha256 of one: " + which + more
            : "write more of the path of one: " + which + more);
  }

  /** Returns the name as a path with slashes; a folder ends in one. */
  private static String path(String name) {
    String path = name.replace('\\', '/').replaceAll("(^|/)(\\./)+", "$1");
    return !path.endsWith("/") && file(name).filter(Files::isDirectory).isPresent()
        ? path + "/"
        : path;
  }

  private static Optional<Path> file(String name) {
    try {
      return Optional.of(Path.of(name));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** Finds the photos of the same bytes as a file, or as the files of a folder. */
  private static List<Kept> byBytes(History history, String name) throws IOException {
    Optional<Path> place = file(name).filter(Files::exists);
    List<Kept> found = new ArrayList<>();
    if (place.isPresent()) {
      try (Stream<Path> files = Files.walk(place.get())) {
        for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
          history.find(Digest.of(Files.readAllBytes(file))).ifPresent(found::add);
        }
      }
    }
    return found;
  }
}
