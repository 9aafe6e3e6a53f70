// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.Set;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.pixels.PointPx;

/**
 * A raft with its place in the photo.
 *
 * @param place its place in the photo's list of rafts
 * @param raft what was measured
 * @param drawing where its parts are
 * @param planted its planted sites
 */
record Sheet(int place, RaftMeasure raft, PhotoResult.RaftDrawing drawing, Set<SiteId> planted) {
  private static final int SITES_A_RAFT = 1024;

  /** Returns the number of a site's pixels in the canopy map. */
  int owner(int site) {
    return SITES_A_RAFT * place + 1 + site;
  }

  /** Returns the board's edge as drawn. */
  Path2D frame(Scale scale) {
    Path2D frame = new Path2D.Double();
    for (PointPx corner : drawing.boardCornersPx()) {
      Point2D.Double at = scale.at(corner);
      if (frame.getCurrentPoint() == null) {
        frame.moveTo(at.x, at.y);
      } else {
        frame.lineTo(at.x, at.y);
      }
    }
    if (frame.getCurrentPoint() != null) {
      frame.closePath();
    }
    return frame;
  }
}
