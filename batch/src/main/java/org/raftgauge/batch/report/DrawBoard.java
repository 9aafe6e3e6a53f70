// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;

/** Draws a board from above with the marks of its sites. */
final class DrawBoard {
  private static final double MARK_OF_PITCH = 0.62;
  private static final double LETTER_OF_MARK = 0.52;

  private DrawBoard() {}

  /**
   * Draws.
   *
   * @param raft its id
   * @param layout the board
   * @param sites its planted sites
   * @return the board, lengths in mm
   */
  static RaftSheet.BoardMap of(String raft, Layout layout, List<RaftSheet.SiteLine> sites) {
    SiteGrid grid = layout.grid();
    double mark = MARK_OF_PITCH * Math.min(grid.pitchXMm(), grid.pitchYMm());
    Map<Mark, List<RaftSheet.SiteLine>> byMark =
        sites.stream()
            .collect(
                Collectors.groupingBy(RaftSheet.SiteLine::mark, TreeMap::new, Collectors.toList()));
    List<RaftSheet.Layer> layers = new ArrayList<>();
    byMark.forEach((which, lines) -> layers.add(layer(which, lines, grid, mark)));
    return new RaftSheet.BoardMap(
        layout.board().widthMm(),
        layout.board().lengthMm(),
        mark,
        layers,
        labels(grid, sites, mark),
        words(raft, byMark));
  }

  private static RaftSheet.Layer layer(
      Mark mark, List<RaftSheet.SiteLine> lines, SiteGrid grid, double sizeMm) {
    List<PointMm> places = lines.stream().map(l -> grid.centre(SiteId.parse(l.site()))).toList();
    double half = sizeMm / 2;
    double foot = half * mark.drop() + 0.36 * LETTER_OF_MARK * sizeMm;
    return new RaftSheet.Layer(
        mark,
        places.stream().map(p -> mark.path(p.xMm(), p.yMm(), half)).collect(Collectors.joining()),
        mark.letter().repeat(places.size()),
        places.stream().map(p -> whole(p.xMm())).collect(Collectors.joining(" ")),
        places.stream().map(p -> whole(p.yMm() + foot)).collect(Collectors.joining(" ")));
  }

  private static String whole(double mm) {
    return String.valueOf(Math.round(mm));
  }

  private static List<RaftSheet.Label> labels(
      SiteGrid grid, List<RaftSheet.SiteLine> sites, double mark) {
    List<RaftSheet.Label> labels = new ArrayList<>();
    for (int column = 0; column < grid.columns(); column++) {
      PointMm at = grid.centre(new SiteId(0, column));
      labels.add(new RaftSheet.Label(String.valueOf(column + 1), at.xMm(), -0.15 * mark));
    }
    for (int row = 0; row < grid.rows(); row++) {
      PointMm at = grid.centre(new SiteId(row, 0));
      String letters = new SiteId(row, 0).toString().replaceAll("\\d", "");
      labels.add(new RaftSheet.Label(letters, -0.3 * mark, at.yMm() + 0.12 * mark));
    }
    Set<String> planted = sites.stream().map(RaftSheet.SiteLine::site).collect(Collectors.toSet());
    for (SiteId bare : grid.sites()) {
      if (!planted.contains(bare.toString())) {
        PointMm at = grid.centre(bare);
        labels.add(new RaftSheet.Label("\u00d7", at.xMm(), at.yMm() + 0.12 * mark));
      }
    }
    for (RaftSheet.SiteLine site : sites) {
      if (site.mark().toLookAt()) {
        PointMm at = grid.centre(SiteId.parse(site.site()));
        labels.add(new RaftSheet.Label(site.site(), at.xMm(), at.yMm() + 0.8 * mark));
      }
    }
    return labels;
  }

  private static String words(String raft, Map<Mark, List<RaftSheet.SiteLine>> byMark) {
    String counts =
        byMark.entrySet().stream()
            .map(e -> e.getValue().size() + " " + e.getKey().word())
            .collect(Collectors.joining(", "));
    return "Board of raft "
        + raft
        + " from above, A1 at the top left, × where nothing is planted: "
        + counts;
  }
}
