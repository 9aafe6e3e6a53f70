// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import org.raftgauge.core.problem.Problem;

/**
 * The photos of a folder.
 *
 * @param photos every file that may be a photo
 * @param problems what is wrong with the folder or its manifest; none of it stops the photos
 */
public record FoundPhotos(List<FoundPhoto> photos, List<Problem> problems) {

  /** Copies the lists. */
  public FoundPhotos {
    photos = List.copyOf(photos);
    problems = List.copyOf(problems);
  }
}
