// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.TagPlace;

/** Tells what a board's face shows at a place. */
final class RaftFace {
  /** Radius of the planting holes; 45 mm across is a common net cup, no source. */
  static final double HOLE_MM = 22;

  private final Raft raft;
  private final double cos;
  private final double sin;
  private final Optional<TagCode> tag;

  RaftFace(Raft raft) {
    this.raft = raft;
    this.cos = Math.cos(raft.place().turnRad());
    this.sin = Math.sin(raft.place().turnRad());
    this.tag = raft.layout().tag().map(place -> new TagCode(raft.id()));
  }

  /** Returns x on the board of a place in the world, mm. */
  double boardX(double x, double y) {
    return (x - raft.place().xMm()) * cos + (y - raft.place().yMm()) * sin;
  }

  /** Returns y on the board of a place in the world, mm. */
  double boardY(double x, double y) {
    return (y - raft.place().yMm()) * cos - (x - raft.place().xMm()) * sin;
  }

  /** Says whether a place in the world lies on the board, its rounded corners cut. */
  boolean covers(double x, double y) {
    double bx = boardX(x, y);
    double by = boardY(x, y);
    double w = raft.layout().board().widthMm();
    double l = raft.layout().board().lengthMm();
    if (bx < 0 || by < 0 || bx > w || by > l) {
      return false;
    }
    double round = 8;
    double dx = Math.max(0, round - Math.min(bx, w - bx));
    double dy = Math.max(0, round - Math.min(by, l - by));
    return dx * dx + dy * dy <= round * round;
  }

  /** Returns the face at a place of the board, in board mm. */
  Face at(double bx, double by) {
    Face print = print(bx, by);
    return print == Face.BOARD ? hole(bx, by) : print;
  }

  private Face print(double bx, double by) {
    Optional<CornerMarkers> markers = raft.layout().markers();
    if (markers.isPresent()) {
      double side = markers.get().sideMm();
      List<PointMm> centres = markers.get().centresMm();
      for (int id = 0; id < 4; id++) {
        double mx = (bx - centres.get(id).xMm()) / side + 0.5;
        double my = (by - centres.get(id).yMm()) / side + 0.5;
        if (mx >= -0.14 && my >= -0.14 && mx < 1.14 && my < 1.14) {
          return inMarker(id, mx, my);
        }
      }
    }
    return tag.isPresent() ? inTag(bx, by) : Face.BOARD;
  }

  private static Face inMarker(int id, double mx, double my) {
    boolean inside = mx >= 0 && my >= 0 && mx < 1 && my < 1;
    boolean white = !inside || MarkerCodes.white(id, (int) (mx * 8), (int) (my * 8));
    return white ? Face.PAPER : Face.INK;
  }

  private Face inTag(double bx, double by) {
    TagPlace place = raft.layout().tag().orElseThrow();
    double tx = (bx - place.xMm()) / place.sideMm() + 0.5;
    double ty = (by - place.yMm()) / place.sideMm() + 0.5;
    double quiet = 4.0 / tag.orElseThrow().modules();
    if (tx < -quiet || ty < -quiet || tx > 1 + quiet || ty > 1 + quiet) {
      return Face.BOARD;
    }
    boolean inside = tx >= 0 && ty >= 0 && tx < 1 && ty < 1;
    return inside && tag.orElseThrow().black(tx, ty) ? Face.INK : Face.PAPER;
  }

  private Face hole(double bx, double by) {
    SiteGrid grid = raft.layout().grid();
    int row = (int) Math.round((by - grid.firstYMm()) / grid.pitchYMm());
    double shift = row % 2 == 1 ? grid.staggerXMm() : 0;
    int column = (int) Math.round((bx - grid.firstXMm() - shift) / grid.pitchXMm());
    if (row < 0 || column < 0 || row >= grid.rows() || column >= grid.columns()) {
      return Face.BOARD;
    }
    double dx = bx - grid.firstXMm() - shift - column * grid.pitchXMm();
    double dy = by - grid.firstYMm() - row * grid.pitchYMm();
    double hole = Math.min(HOLE_MM, 0.3 * grid.pitchXMm());
    double r2 = dx * dx + dy * dy;
    boolean plugged = raft.sites().get(row * grid.columns() + column).plugged();
    if (raft.look().netCups() && plugged) {
      double rim = hole + 4;
      return r2 > rim * rim ? Face.BOARD : r2 > (hole - 1) * (hole - 1) ? Face.RIM : plug(r2, hole);
    }
    return r2 > hole * hole ? Face.BOARD : plugged ? plug(r2, hole) : Face.HOLE;
  }

  private Face plug(double r2, double hole) {
    double core = hole * raft.look().medium().coreShare();
    return r2 > core * core ? Face.COLLAR : Face.PLUG;
  }
}
