// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.Comparator;
import java.util.List;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.CheckPhoto;
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

  /**
   * Returns the photos by path, but those first whose name tells their place: of several with the
   * same bytes the first counts, and that should not be a renamed copy.
   *
   * @param book the crop book
   */
  public List<FoundPhoto> inOrder(CropBook book) {
    Comparator<FoundPhoto> placed =
        Comparator.comparing(p -> !CheckPhoto.isPlaced(p.facts(), book));
    return photos.stream().sorted(placed.thenComparing(p -> p.facts().photo())).toList();
  }
}
