// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.FoundBoard;

/**
 * A measured photo with what is needed to draw it.
 *
 * @param measure the measure
 * @param picture the photo as decoded, upright, where it could be read
 * @param canopy its canopy, where it was measured
 * @param drawings a drawing for each raft of the measure, in the same order
 * @param heights heights of what it shows, where a second camera saw any
 */
public record PhotoResult(
    PhotoMeasure measure,
    Optional<RgbImage> picture,
    Optional<CanopyMap> canopy,
    List<RaftDrawing> drawings,
    Optional<HeightPicture> heights) {

  /** Copies the drawings. */
  public PhotoResult {
    drawings = List.copyOf(drawings);
  }

  /**
   * Makes a result without heights.
   *
   * @param measure the measure
   * @param picture the photo as decoded, where it could be read
   * @param canopy its canopy, where it was measured
   * @param drawings a drawing for each raft
   */
  public PhotoResult(
      PhotoMeasure measure,
      Optional<RgbImage> picture,
      Optional<CanopyMap> canopy,
      List<RaftDrawing> drawings) {
    this(measure, picture, canopy, drawings, Optional.empty());
  }

  /**
   * Returns the same picture to be drawn with another measure of the same rafts, some of them with
   * their sites named from the other end.
   *
   * @param settled the measure, its rafts in the same order
   * @param turned the places of the rafts that were turned by half a turn
   * @return the result, its outlines and site numbers turned along
   */
  public PhotoResult settled(PhotoMeasure settled, Set<Integer> turned) {
    List<RaftDrawing> drawn = new ArrayList<>();
    Map<Integer, Integer> sites = new HashMap<>();
    for (int place = 0; place < drawings.size(); place++) {
      boolean isTurned = turned.contains(place);
      drawn.add(isTurned ? drawings.get(place).turned() : drawings.get(place));
      if (isTurned) {
        sites.put(place, drawings.get(place).siteCentresPx().size());
      }
    }
    return new PhotoResult(settled, picture, canopy.map(c -> c.turned(sites)), drawn, heights);
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

    /** Draws a board where it was found. */
    static RaftDrawing of(FoundBoard board, List<PointMm> plantCentres) {
      Layout layout = board.layout();
      double w = layout.board().widthMm();
      double l = layout.board().lengthMm();
      List<PointMm> corners =
          List.of(new PointMm(0, 0), new PointMm(w, 0), new PointMm(w, l), new PointMm(0, l));
      List<PointMm> sites = layout.grid().sites().stream().map(layout.grid()::centre).toList();
      return new RaftDrawing(
          inPhoto(board, corners), inPhoto(board, sites), inPhoto(board, plantCentres));
    }

    private static List<PointPx> inPhoto(FoundBoard board, List<PointMm> places) {
      return places.stream().map(board.pose()::toPhoto).toList();
    }

    private RaftDrawing turned() {
      List<PointPx> corners = new ArrayList<>(boardCornersPx);
      Collections.rotate(corners, 2);
      return new RaftDrawing(corners, reversed(siteCentresPx), reversed(plantCentresPx));
    }

    private static List<PointPx> reversed(List<PointPx> places) {
      List<PointPx> reversed = new ArrayList<>(places);
      Collections.reverse(reversed);
      return reversed;
    }
  }
}
