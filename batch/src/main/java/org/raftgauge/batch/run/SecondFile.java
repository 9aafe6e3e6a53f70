// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.batch.folder.ReadPhoto;
import org.raftgauge.core.problem.InputException;

/** Reads the file that a station's second camera took with a photo. */
final class SecondFile {

  private SecondFile() {}

  /** Returns its bytes; nothing where there is none or it cannot be read: heights are lost only. */
  static Optional<byte[]> bytes(FoundPhoto photo) {
    if (photo.second().isEmpty()) {
      return Optional.empty();
    }
    Path file = photo.second().get();
    try {
      return Optional.of(ReadPhoto.bytes(file, file.getFileName().toString()));
    } catch (InputException unreadable) {
      return Optional.empty();
    }
  }
}
