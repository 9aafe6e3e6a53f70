// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.marker.FindMarkers;
import org.raftgauge.core.marker.FindTags;
import org.raftgauge.core.marker.PictureRegion;
import org.raftgauge.core.marker.TagSighting;
import org.raftgauge.core.photo.FinePhoto;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Looks again, enlarged, where a board's missing marks must be. */
final class LookAgain {
  /** Half the part of the photo looked at, as a share of the mark's side. */
  private static final double HALF_SIDES = 1.3;

  private final RgbImage photo;
  private final Optional<FinePhoto> fine;
  private final FitPose.Prior prior;

  /**
   * Sets up the second look.
   *
   * @param photo the photo
   * @param fine all its pixels, where it was averaged
   * @param prior what is known of the camera
   */
  LookAgain(RgbImage photo, Optional<FinePhoto> fine, FitPose.Prior prior) {
    this.photo = photo;
    this.fine = fine;
    this.prior = prior;
  }

  /** Returns the group with what a second look found. */
  MarkGroup forMissing(MarkGroup group) {
    MarkGroup present = group;
    for (int id = 0; id < 4 && group.layout().markers().isPresent(); id++) {
      if (!present.has(id)) {
        present = withMarker(present, id);
      }
    }
    return present.has(Mark.TAG) ? present : withTag(present);
  }

  private MarkGroup withMarker(MarkGroup group, int id) {
    List<PointMm> places = BoardPlaces.marker(group.layout().markers().orElseThrow(), id);
    Optional<PictureRegion> region = region(group, places);
    if (region.isEmpty()) {
      return group;
    }
    return FindMarkers.in(photo, region.get(), 2).stream()
        .filter(m -> m.id() == id)
        .map(Mark::of)
        .filter(m -> group.missMm(m) < group.gateMm(m))
        .findFirst()
        .map(m -> agreeing(group, m))
        .orElse(group);
  }

  private MarkGroup withTag(MarkGroup group) {
    Optional<PictureRegion> region =
        group.layout().tag().flatMap(t -> region(group, BoardPlaces.tag(t)));
    for (int enlarge = 1; region.isPresent() && enlarge <= 3; enlarge++) {
      Optional<Mark> tag = onBoard(group, FindTags.in(photo, region.get(), enlarge));
      if (tag.isPresent()) {
        return agreeing(group, tag.get());
      }
    }
    return region.isEmpty() || fine.isEmpty()
        ? group
        : onBoard(group, FindTags.in(fine.get(), region.get().on(photo)))
            .map(m -> agreeing(group, m))
            .orElse(group);
  }

  private static Optional<Mark> onBoard(MarkGroup group, List<TagSighting> tags) {
    return tags.stream().map(Mark::of).filter(m -> group.missMm(m) < group.gateMm(m)).findFirst();
  }

  /** Adds a mark if it lies in line with the others; a second look does not outvote them. */
  private MarkGroup agreeing(MarkGroup group, Mark mark) {
    MarkGroup more = group.with(mark, prior);
    return group.marks().size() > 1 && more.rmsPx() > 3 * Math.max(0.5, group.rmsPx())
        ? group
        : more;
  }

  /** Returns the part of the photo about a mark's place, where that is on the photo. */
  private Optional<PictureRegion> region(MarkGroup group, List<PointMm> places) {
    PointPx a = group.fit().pose().toPhoto(places.get(0));
    PointPx c = group.fit().pose().toPhoto(places.get(2));
    PointPx middle = new PointPx((a.xPx() + c.xPx()) / 2, (a.yPx() + c.yPx()) / 2);
    double side = a.distancePx(c) / Math.sqrt(2);
    boolean on =
        middle.xPx() > 0
            && middle.yPx() > 0
            && middle.xPx() < photo.width()
            && middle.yPx() < photo.height();
    return on ? Optional.of(PictureRegion.around(middle, HALF_SIDES * side)) : Optional.empty();
  }
}
