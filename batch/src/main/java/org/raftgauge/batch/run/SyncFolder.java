// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.raftgauge.batch.store.Step;
import org.raftgauge.batch.store.Steps;

/**
 * Forces a folder with all that is in it to the disk, so that a power cut cannot empty its files.
 */
final class SyncFolder {

  private SyncFolder() {}

  static void all(Path folder, Steps steps) throws IOException {
    List<Path> paths;
    try (Stream<Path> walk = Files.walk(folder)) {
      paths = walk.sorted().toList();
    }
    for (Path path : paths) {
      if (Files.isRegularFile(path)) {
        steps.before(Step.SYNC_FILE);
        try (FileChannel channel = FileChannel.open(path, StandardOpenOption.WRITE)) {
          channel.force(true);
        }
      }
    }
    for (Path path : paths) {
      if (Files.isDirectory(path)) {
        entries(path, steps);
      }
    }
  }

  /** Forces a folder's list of names; where the system cannot do that, it does so by itself. */
  static void entries(Path folder, Steps steps) throws IOException {
    steps.before(Step.SYNC_FOLDER);
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException cannot) {
      // Windows opens no folder; its file systems keep names by themselves.
    }
  }
}
