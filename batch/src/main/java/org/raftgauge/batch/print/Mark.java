// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.print;

import java.util.List;
import org.raftgauge.core.marker.Cells;
import org.raftgauge.core.marker.DrawMarks;

/**
 * A mark to print.
 *
 * @param cells its black and white cells
 * @param sideMm its side without quiet zone, mm
 * @param quietMm white about it, mm
 * @param head what it belongs to
 * @param foot where it goes
 */
public record Mark(Cells cells, double sideMm, double quietMm, String head, String foot) {
  private static final List<String> CORNER =
      List.of("at the A1 corner", "next, clockwise", "across from A1", "last, clockwise");

  /**
   * Returns a raft's tag.
   *
   * @param raft its id
   * @param sideMm side of the code, mm
   * @return the mark
   */
  public static Mark tag(String raft, double sideMm) {
    Cells cells = DrawMarks.tag(raft);
    double quiet = DrawMarks.TAG_QUIET_CELLS * sideMm / cells.side();
    return new Mark(cells, sideMm, quiet, raft, raft + ": tag, " + mm(sideMm));
  }

  /**
   * Returns a corner marker.
   *
   * @param id its number, 0 to 3
   * @param sideMm side of its black square, mm
   * @param raft what it belongs to
   * @return the mark
   */
  public static Mark corner(int id, double sideMm, String raft) {
    Cells cells = DrawMarks.marker(id);
    double quiet = DrawMarks.MARKER_QUIET_CELLS * sideMm / cells.side();
    return new Mark(cells, sideMm, quiet, raft, id + " " + CORNER.get(id) + ", " + mm(sideMm));
  }

  private static String mm(double side) {
    return (side == Math.rint(side) ? Long.toString((long) side) : Double.toString(side)) + " mm";
  }

  /** Returns the side with the quiet zone on both sides, mm. */
  double outerMm() {
    return sideMm + 2 * quietMm;
  }
}
