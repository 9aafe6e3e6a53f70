// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.plane.CameraPose;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.relief.HeightMap;

/**
 * What the measuring of sites stands on, besides the canopy.
 *
 * @param deck the deck picture
 * @param layout the board's layout
 * @param pose the camera over the board
 * @param poseErrorMm standard error of a place on the deck, mm
 * @param heights the height model of each site, in the order of {@code layout.grid().sites()}
 * @param closedOutline the shared share of the outline past which each site counts as closed, same
 *     order
 * @param relief heights seen of the deck picture's pixels, where there are any
 */
public record Ground(
    DeckImage deck,
    Layout layout,
    CameraPose pose,
    double poseErrorMm,
    List<HeightModel> heights,
    List<Double> closedOutline,
    Optional<HeightMap> relief) {

  /** Copies the lists. */
  public Ground {
    heights = List.copyOf(heights);
    closedOutline = List.copyOf(closedOutline);
    if (heights.size() != layout.grid().sites().size() || closedOutline.size() != heights.size()) {
      throw new IllegalArgumentException(
          "heights and closedOutline must have one entry a site, got " + heights.size());
    }
  }

  /**
   * Says what measuring stands on where no heights were seen.
   *
   * @param deck the deck picture
   * @param layout the board's layout
   * @param pose the camera over the board
   * @param poseErrorMm standard error of a place on the deck, mm
   * @param heights the height model of each site
   * @param closedOutline the shared share of the outline past which each site counts as closed
   */
  public Ground(
      DeckImage deck,
      Layout layout,
      CameraPose pose,
      double poseErrorMm,
      List<HeightModel> heights,
      List<Double> closedOutline) {
    this(deck, layout, pose, poseErrorMm, heights, closedOutline, Optional.empty());
  }

  List<SiteId> sites() {
    return layout.grid().sites();
  }

  double pitchPx() {
    double px = layout.grid().pitchXMm();
    double py = layout.grid().pitchYMm();
    double mm =
        layout.grid().columns() == 1 ? py : layout.grid().rows() == 1 ? px : Math.min(px, py);
    double board = Math.min(layout.board().widthMm(), layout.board().lengthMm());
    return Math.min(mm, board) / deck.mmPerPx();
  }
}
