// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.file.Path;
import java.util.Optional;
import org.raftgauge.core.measure.PhotoFacts;

/**
 * A photo file with what is known of it besides its bytes.
 *
 * @param file the file
 * @param facts its path below the photo folder and its row of the manifest
 * @param second the file that the station's second camera took at the same moment
 */
public record FoundPhoto(Path file, PhotoFacts facts, Optional<Path> second) {

  /**
   * Wraps a photo of one camera.
   *
   * @param file the file
   * @param facts its path below the photo folder and its row of the manifest
   */
  public FoundPhoto(Path file, PhotoFacts facts) {
    this(file, facts, Optional.empty());
  }

  /** Returns the photo with the file of the second camera. */
  FoundPhoto with(Path secondFile) {
    return new FoundPhoto(file, facts, Optional.of(secondFile));
  }
}
