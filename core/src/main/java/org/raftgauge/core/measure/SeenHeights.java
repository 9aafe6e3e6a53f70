// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.opencv.DistanceTo;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.relief.DeckLevel;
import org.raftgauge.core.relief.HeightMap;
import org.raftgauge.core.relief.Heights;
import org.raftgauge.core.relief.NoHeights;
import org.raftgauge.core.relief.SecondPicture;
import org.raftgauge.core.relief.SeeHeights;
import org.raftgauge.core.site.SiteMeasure;

/** Heights of canopy as a station's second camera sees them. */
final class SeenHeights {
  /** Bare deck lies at least so far from any leaf, mm: leaf edges blur into their ground. */
  private static final double FROM_LEAF_MM = 12;

  private final RgbImage first;
  private final Optional<SecondPicture> second;
  private final List<NoHeights> none;

  private SeenHeights(RgbImage first, Optional<SecondPicture> second, List<NoHeights> none) {
    this.first = first;
    this.second = second;
    this.none = none;
  }

  /** What was seen over one board: a map, or why there is none; neither with one camera. */
  record OfBoard(Optional<HeightMap> map, List<NoHeights> none) {

    /** Returns how far the two cameras' rows lie apart, px, where told. */
    OptionalDouble rowsPx() {
      return Stream.concat(map.stream(), none.stream())
          .map(Heights::rowsPx)
          .flatMapToDouble(OptionalDouble::stream)
          .findFirst();
    }

    /** Returns what is to be said of it. */
    List<String> notes(List<SiteMeasure> sites) {
      if (map.isEmpty()) {
        return none.stream()
            .map(n -> RaftMeasure.HEIGHTS_BY_MODEL + n.reason() + "; " + n.remedy())
            .toList();
      }
      long leafy = sites.stream().filter(s -> s.projectedAreaCm2().orElse(0) > 0).count();
      long seen = sites.stream().filter(s -> !s.relief().isEmpty()).count();
      return seen == leafy
          ? List.of()
          : List.of(
              String.format(
                  Locale.ROOT,
                  "of %d plants %d were seen too little by the second camera: their heights are"
                      + " from the crop's model",
                  leafy,
                  leafy - seen));
    }
  }

  static SeenHeights of(PhotoViews views, Station station) {
    if (station.second().isEmpty()) {
      return new SeenHeights(views.first(), Optional.empty(), List.of());
    }
    if (views.second().isEmpty()) {
      return new SeenHeights(
          views.first(),
          Optional.empty(),
          List.of(
              new NoHeights(
                  "there is no picture of the second camera of this moment",
                  "see that both cameras are on and that their files are in the folder")));
    }
    SecondPicture.Answer answer =
        SecondPicture.decode(views.second().get(), station.second().get());
    return new SeenHeights(views.first(), answer.picture(), answer.none().stream().toList());
  }

  /** Sees the heights over a board. */
  OfBoard over(MeasureBoard.Lit lit, Canopy canopy) {
    if (second.isEmpty()) {
      return new OfBoard(Optional.empty(), none);
    }
    Heights heights = SeeHeights.over(first, second.get(), lit.board(), lit.deck());
    if (heights instanceof HeightMap map) {
      heights = DeckLevel.of(map, bare(lit, canopy));
    }
    return heights instanceof HeightMap map
        ? new OfBoard(Optional.of(map), List.of())
        : new OfBoard(Optional.empty(), List.of((NoHeights) heights));
  }

  /** Says of each deck pixel whether it shows bare board, well away from leaf and rim. */
  private static boolean[] bare(MeasureBoard.Lit lit, Canopy canopy) {
    DeckImage deck = lit.deck();
    int reach = (int) Math.ceil(FROM_LEAF_MM / deck.mmPerPx());
    boolean[] leaf = new boolean[canopy.width() * canopy.height()];
    for (int i = 0; i < leaf.length; i++) {
      leaf[i] = canopy.coverage()[i] != 0;
    }
    float[] away = DistanceTo.nearest(leaf, canopy.width(), canopy.height());
    boolean[] bare = new boolean[leaf.length];
    for (int i = 0; i < bare.length; i++) {
      PointMm at = deck.toMm(new PointPx(i % canopy.width(), Math.floorDiv(i, canopy.width())));
      bare[i] = away[i] > reach && onBoard(at, lit);
    }
    return bare;
  }

  private static boolean onBoard(PointMm at, MeasureBoard.Lit lit) {
    var board = lit.board().layout().board();
    return at.xMm() > FROM_LEAF_MM
        && at.yMm() > FROM_LEAF_MM
        && at.xMm() < board.widthMm() - FROM_LEAF_MM
        && at.yMm() < board.lengthMm() - FROM_LEAF_MM;
  }
}
