// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.marker.FindMarkers;
import org.raftgauge.core.marker.FindTags;
import org.raftgauge.core.marker.MarkerSighting;
import org.raftgauge.core.marker.PictureRegion;
import org.raftgauge.core.marker.TagSighting;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Finds the boards in a photo and the camera's pose over each. */
public final class FindBoards {
  /** Aspect ratios that differ by more are no mere scaling: rounding of 640 x 480 gives 0.2 %. */
  private static final double ASPECT_FRACTION = 0.005;

  private FindBoards() {}

  /**
   * Finds rafts that pass a station, by their corner markers and tags.
   *
   * @param photo the photo
   * @param station the station; its lens is scaled to the photo's size
   * @param layouts the layouts that its boards may have
   * @return the boards and what was left over; a refusal where the photo cannot be the station's
   */
  public static FoundBoards passing(RgbImage photo, Station station, KnownLayouts layouts) {
    Optional<Lens> lens = lensFor(photo, station);
    if (lens.isEmpty()) {
      return FoundBoards.refused(otherShape(photo, station));
    }
    FitPose.Prior prior = FitPose.Prior.of(lens.get(), station.cameraHeightMm());
    List<String> leftovers = new ArrayList<>();
    List<Mark> marks = marks(photo, leftovers);
    GroupMarks grouping = new GroupMarks(layouts, prior);
    List<FoundBoard> boards = new ArrayList<>();
    for (GroupMarks.Grouped grouped : grouping.group(marks)) {
      boards.add(board(photo, grouped, prior));
    }
    marks.forEach(m -> leftovers.add(m.named() + " fits no board"));
    return new FoundBoards(boards, leftovers, "");
  }

  /** Returns the station's lens for the photo's size, or nothing where its shape differs. */
  static Optional<Lens> lensFor(RgbImage photo, Station station) {
    double factor = (double) photo.width() / station.imageWidthPx();
    double other = (double) photo.height() / station.imageHeightPx();
    if (Math.abs(factor / other - 1) > ASPECT_FRACTION) {
      return Optional.empty();
    }
    return Optional.of(factor == 1 ? station.lens() : station.lens().scaled(factor));
  }

  static String otherShape(RgbImage photo, Station station) {
    return String.format(
        Locale.ROOT,
        "photo is %d x %d px, station %s takes %d x %d: not the same shape; use the station's own"
            + " camera, uncropped, or set up a station for this one",
        photo.width(),
        photo.height(),
        station.name(),
        station.imageWidthPx(),
        station.imageHeightPx());
  }

  private static List<Mark> marks(RgbImage photo, List<String> leftovers) {
    List<Mark> marks = new ArrayList<>();
    for (MarkerSighting marker : FindMarkers.in(photo)) {
      if (marker.id() < 4) {
        marks.add(Mark.of(marker));
      } else {
        leftovers.add("marker " + marker.id() + ": corner markers have ids 0 to 3");
      }
    }
    for (TagSighting tag : FindTags.in(photo)) {
      if (!tag.usable()) {
        leftovers.add(Mark.of(tag).named() + ": " + tag.unusable());
      }
      marks.add(Mark.of(tag));
    }
    return marks;
  }

  private static FoundBoard board(RgbImage photo, GroupMarks.Grouped grouped, FitPose.Prior prior) {
    MarkGroup group = grouped.group();
    List<String> notes = new ArrayList<>(grouped.notes());
    if (group.tag().isEmpty()) {
      group = withTagLookedFor(photo, group, prior);
    }
    return new FoundBoard(
        group.tag().flatMap(Mark::text),
        Optional.empty(),
        group.layout(),
        group.fit().pose(),
        PoseSource.MARKERS,
        group.fit().errorMm(group.layout().board()),
        true,
        notes,
        "");
  }

  /** Looks again, enlarged, where the tag must be. */
  private static MarkGroup withTagLookedFor(RgbImage photo, MarkGroup group, FitPose.Prior prior) {
    Optional<PointPx> place = group.tagPx();
    if (place.isEmpty()) {
      return group;
    }
    double sidePx = group.layout().tag().orElseThrow().sideMm() / scale(group);
    PictureRegion region = PictureRegion.around(place.get(), 1.2 * sidePx);
    for (int enlarge = 1; enlarge <= 3; enlarge++) {
      for (TagSighting tag : FindTags.in(photo, region, enlarge)) {
        Mark mark = Mark.of(tag);
        if (group.missMm(mark) < group.gateMm(mark)) {
          return group.with(mark, prior);
        }
      }
    }
    return group;
  }

  private static double scale(MarkGroup group) {
    return group.fit().pose().mmPerPxAt(BoardPlaces.centre(group.layout().board()));
  }
}
