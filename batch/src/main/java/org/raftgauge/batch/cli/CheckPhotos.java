// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.raftgauge.batch.folder.ReadPhoto;
import org.raftgauge.batch.run.Digest;
import org.raftgauge.batch.run.FoundPhoto;
import org.raftgauge.batch.run.FoundPhotos;
import org.raftgauge.batch.run.NameOfRaft;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.measure.CheckPhoto;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.problem.Problem;

/** Checks a photo folder against a book, measuring nothing. */
final class CheckPhotos {
  /** Endings of pictures and films that cameras write and that are not read. */
  private static final Set<String> OTHER_PICTURES =
      Set.of(
          "heic", "heif", "avif", "webp", "bmp", "gif", "mp4", "mov", "dng", "cr2", "cr3", "nef",
          "arw", "raf", "orf", "rw2");

  /** Rafts that a note names; the others are counted. */
  private static final int MOST_NAMED = 12;

  private final Path folder;
  private final BookReading reading;

  CheckPhotos(Path folder, BookReading reading) {
    this.folder = folder;
    this.reading = reading;
  }

  /** Lists what is wrong with the manifest, with its names, and with each photo. */
  List<Problem> problems(FoundPhotos found) throws InputException {
    List<Problem> problems = new ArrayList<>(found.problems());
    problems.addAll(BookWorkplace.manifest(folder).problemsWith(reading));
    for (String other : BookWorkplace.find(folder).notPhotos()) {
      if (OTHER_PICTURES.contains(ending(other))) {
        problems.add(
            Problem.warning(
                other,
                "files of this kind are not read",
                "save it as a JPEG, or set the camera to JPEG"));
      }
    }
    if (found.photos().isEmpty() && problems.isEmpty()) {
      problems.add(Folders.empty(folder));
    }
    Map<String, String> first = new HashMap<>();
    for (FoundPhoto photo : found.inOrder(reading.book())) {
      problems.addAll(check(photo, first));
    }
    return problems;
  }

  /** Names the rafts of file names that no planting has, nor any one nearly spelt so. */
  List<String> notes(FoundPhotos found) {
    Set<String> rafts = new TreeSet<>();
    found.photos().forEach(p -> NameOfRaft.unknown(p, reading.book()).ifPresent(rafts::add));
    if (rafts.isEmpty()) {
      return List.of();
    }
    String more = rafts.size() > MOST_NAMED ? " and " + (rafts.size() - MOST_NAMED) + " more" : "";
    return List.of(
        "plantings.csv has no raft of these names of photos: "
            + rafts.stream().limit(MOST_NAMED).collect(Collectors.joining(", "))
            + more
            + "; add what is missing, unless the photos' tags tell other rafts");
  }

  private static String ending(String file) {
    return file.substring(file.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  /** Checks a photo; {@code first} holds the first photo of each content. */
  private List<Problem> check(FoundPhoto photo, Map<String, String> first) {
    String name = photo.facts().photo();
    try {
      byte[] bytes = ReadPhoto.bytes(photo.file(), name);
      String other = first.putIfAbsent(Digest.of(bytes), name);
      if (other != null) {
        return List.of(
            Problem.warning(
                name,
                "holds the same bytes as " + other + ", and a run counts one of them",
                "take the copy out of the folder"));
      }
      List<Problem> problems =
          new ArrayList<>(CheckPhoto.problems(bytes, photo.facts(), reading.book(), Instant.now()));
      NameOfRaft.misspelt(photo, reading.book()).ifPresent(problems::add);
      return problems;
    } catch (InputException unreadable) {
      return unreadable.problems();
    }
  }
}
