// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * A measured photo with what is needed to draw it.
 *
 * @param measure the measure
 * @param picture the photo as decoded, upright, where it could be read
 * @param canopy its canopy, where it was measured
 * @param drawings a drawing for each raft of the measure, in the same order
 */
public record PhotoResult(
    PhotoMeasure measure,
    Optional<RgbImage> picture,
    Optional<CanopyMap> canopy,
    List<RaftDrawing> drawings) {

  /** Copies the drawings. */
  public PhotoResult {
    drawings = List.copyOf(drawings);
  }

  /**
   * Where a raft's parts are in the photo.
   *
   * @param boardCornersPx the board's corners, clockwise from the origin corner
   * @param siteCentresPx the sites' centres on the deck, in the order of {@link
   *     RaftMeasure#sites()}
   * @param plantCentresPx where each plant's foot is expected once its height is allowed for, in
   *     the same order
   */
  public record RaftDrawing(
      List<PointPx> boardCornersPx, List<PointPx> siteCentresPx, List<PointPx> plantCentresPx) {

    /** Copies the lists. */
    public RaftDrawing {
      boardCornersPx = List.copyOf(boardCornersPx);
      siteCentresPx = List.copyOf(siteCentresPx);
      plantCentresPx = List.copyOf(plantCentresPx);
    }
  }
}
