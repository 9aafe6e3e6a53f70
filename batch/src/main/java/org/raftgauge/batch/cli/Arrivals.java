// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.batch.run.FoundPhoto;

/**
 * Tells which photos of a folder have arrived whole: their size and time of change stood still from
 * one look to the next. Looking is used, not the system's notices, which network drives and camera
 * cards do not give.
 */
final class Arrivals {
  private final Map<Path, Stamp> lastLook = new HashMap<>();
  private final Map<Path, Stamp> told = new HashMap<>();

  private record Stamp(long bytes, FileTime changed) {}

  /** Takes all that is there already for told. */
  void begin(List<FoundPhoto> photos) {
    for (FoundPhoto photo : photos) {
      stamp(photo.file()).ifPresent(stamp -> told.put(photo.file(), stamp));
    }
  }

  /**
   * Looks.
   *
   * @param photos the photos that are there now
   * @return those that are whole and new, or new again, in the order in which they were changed
   */
  List<FoundPhoto> look(List<FoundPhoto> photos) {
    Map<Path, Stamp> now = new HashMap<>();
    List<FoundPhoto> whole = new ArrayList<>();
    for (FoundPhoto photo : photos) {
      Optional<Stamp> stamp = stamp(photo.file()).filter(s -> s.bytes() > 0);
      if (stamp.isEmpty() || stamp.get().equals(told.get(photo.file()))) {
        continue;
      }
      now.put(photo.file(), stamp.get());
      if (stamp.get().equals(lastLook.get(photo.file()))) {
        told.put(photo.file(), stamp.get());
        whole.add(photo);
      }
    }
    lastLook.clear();
    lastLook.putAll(now);
    whole.sort((a, b) -> told.get(a.file()).changed().compareTo(told.get(b.file()).changed()));
    return whole;
  }

  private static Optional<Stamp> stamp(Path file) {
    try {
      return Optional.of(new Stamp(Files.size(file), Files.getLastModifiedTime(file)));
    } catch (IOException gone) {
      return Optional.empty();
    }
  }
}
