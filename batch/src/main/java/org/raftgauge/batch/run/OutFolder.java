// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Checks that a run may be published where a person asks for it. */
final class OutFolder {
  private static final int LOOKS = 4;
  private static final long PAUSE_NANOS = 150_000_000;

  private OutFolder() {}

  /**
   * Checks a request before anything is measured.
   *
   * @param request the request
   * @throws InputException if publishing would touch anything but an earlier run
   */
  static void check(RunRequest request) throws InputException {
    Path out = real(request.out().orElse(request.book().resolve("runs")));
    Path photos = real(request.photos());
    Path book = real(request.book());
    if (out.startsWith(photos)) {
      throw wrong(
          out,
          "lies inside the photo folder",
          "pictures of the run would be taken for photos; give an OUT elsewhere");
    }
    if ((photos.startsWith(out) && request.out().isPresent()) || book.startsWith(out)) {
      throw wrong(out, "holds the photos or the book", "give an OUT of its own");
    }
    checkNoDrive(out);
    checkWritable(out);
    if (request.out().isPresent()) {
      checkOwn(out);
    }
  }

  /**
   * Checks the folder of results that need no photos. They do not take the place of a run's, whose
   * page and pictures would be gone.
   *
   * @param folder where they are asked for
   * @param book the book's folder
   * @throws InputException if publishing would touch anything but earlier results of their kind
   */
  static void check(Path folder, Path book) throws InputException {
    Path out = real(folder);
    if (real(book).startsWith(out)) {
      throw wrong(out, "holds the book", "give an OUT of its own");
    }
    checkNoDrive(out);
    checkWritable(out);
    checkOwn(out);
    if (Files.exists(out.resolve(FillDraft.PHOTOS))) {
      throw wrong(
          out,
          "holds the results of a run over photos, with its page and pictures",
          "give another folder");
    }
  }

  /** Follows the links of a path as far as it is there. */
  private static Path real(Path path) throws InputException {
    Path whole = path.toAbsolutePath().normalize();
    Path there = whole;
    while (!Files.exists(there) && there.getParent() != null) {
      there = there.getParent();
    }
    try {
      return there.toRealPath().resolve(there.relativize(whole));
    } catch (IOException e) {
      throw wrong(whole, "cannot be read: " + e.getMessage(), "give another folder");
    }
  }

  private static void checkOwn(Path out) throws InputException {
    if (Files.isRegularFile(out)) {
      throw wrong(
          out, "is a file, not a folder", "give a new or empty folder, or an earlier run's");
    }
    try {
      Optional<Path> shut = shut(out);
      if (shut.isPresent()) {
        throw wrong(
            out,
            "cannot be replaced: you may not write in \"" + shut.get() + "\"",
            "give an OUT elsewhere, or change that folder's rights");
      }
      Optional<Path> foreign = foreignForGood(out);
      if (foreign.isPresent()) {
        throw wrong(
            out,
            "holds \"" + foreign.get() + "\", which no earlier run wrote",
            "give a new or empty folder, or an earlier run's");
      }
    } catch (IOException | UncheckedIOException e) {
      throw wrong(out, "cannot be read: " + e.getMessage(), "give another folder");
    }
  }

  /** Looks for a folder of an earlier run that could not be emptied. */
  private static Optional<Path> shut(Path out) {
    try (Stream<Path> walk = Files.walk(out)) {
      return walk.filter(Files::isDirectory).filter(p -> !Files.isWritable(p)).findFirst();
    } catch (IOException | UncheckedIOException moved) {
      // It is not there, or another run is putting its results there.
      return Optional.empty();
    }
  }

  /**
   * Looks for something foreign that stays: another run may just be putting its results there, and
   * what is seen of both is neither's.
   */
  private static Optional<Path> foreignForGood(Path out) throws IOException {
    for (int look = 1; look < LOOKS; look++) {
      try {
        if (foreign(out).isEmpty()) {
          return Optional.empty();
        }
      } catch (IOException | UncheckedIOException moved) {
        // It is looked at again; the last look, below, tells.
      }
      LockSupport.parkNanos(PAUSE_NANOS);
    }
    return foreign(out);
  }

  /**
   * Checks that a folder is not the whole of a drive: results take a folder's place by renaming.
   */
  private static void checkNoDrive(Path out) throws InputException {
    try {
      boolean drive =
          Files.exists(out)
              && (out.getParent() == null
                  || !Files.getFileStore(out).equals(Files.getFileStore(out.getParent())));
      if (drive) {
        throw wrong(
            out,
            "is a whole drive, and results take the place of a folder",
            "give a folder on it, such as " + out.resolve("results"));
      }
    } catch (NoSuchFileException moved) {
      // Another run is putting its results there.
    } catch (IOException e) {
      throw wrong(out, "cannot be read: " + e.getMessage(), "give another folder");
    }
  }

  /** Checks that the folder can be made, or written where it is there. */
  private static void checkWritable(Path out) throws InputException {
    Path there = out;
    while (!Files.exists(there) && there.getParent() != null) {
      there = there.getParent();
    }
    if (!there.equals(out) && !Files.isDirectory(there)) {
      throw wrong(out, "lies below \"" + there + "\", which is a file", "give another folder");
    }
    Path written = there.equals(out) && out.getParent() != null ? out.getParent() : there;
    if (!Files.isWritable(written)) {
      throw wrong(
          out,
          "cannot be written: you may not write in \"" + written + "\"",
          "give an OUT elsewhere, or change that folder's rights");
    }
  }

  /**
   * Looks for something in a folder that no earlier run wrote.
   *
   * @param out the folder, which need not exist
   * @return the first such thing
   */
  static Optional<Path> foreign(Path out) throws IOException {
    if (!Files.exists(out)) {
      return Optional.empty();
    }
    if (!Files.isDirectory(out)) {
      return Optional.of(out.getFileName());
    }
    List<Path> files;
    try (Stream<Path> walk = Files.walk(out)) {
      files = walk.filter(p -> !Files.isDirectory(p)).map(out::relativize).sorted().toList();
    }
    String listed = RunJson.read(out);
    return files.stream().filter(f -> !RunJson.lists(listed, f)).findFirst();
  }

  private static InputException wrong(Path out, String found, String remedy) {
    return new InputException(List.of(new Problem("OUT " + out, found, remedy)));
  }
}
