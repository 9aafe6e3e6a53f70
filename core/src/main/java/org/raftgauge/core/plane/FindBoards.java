// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.photo.FinePhoto;
import org.raftgauge.core.pixels.RgbImage;

/** Finds the boards in a photo and the camera's pose over each. */
public final class FindBoards {
  /** Aspect ratios that differ by more are no mere scaling: rounding of 640 x 480 gives 0.2 %. */
  private static final double ASPECT_FRACTION = 0.005;

  private static final String OTHER_SHAPE_REMEDY =
      "use the station's own camera, uncropped, or name the photo's station, or set up one for it";

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
    return passing(photo, Optional.empty(), station, layouts);
  }

  /**
   * Finds rafts that pass a station in a photo that was averaged; tags too fine for that are read
   * in all its pixels.
   *
   * @param photo the photo
   * @param fine all its pixels, where it was averaged
   * @param station the station; its lens is scaled to the photo's size
   * @param layouts the layouts that its boards may have
   * @return the boards and what was left over; a refusal where the photo cannot be the station's
   */
  public static FoundBoards passing(
      RgbImage photo, Optional<FinePhoto> fine, Station station, KnownLayouts layouts) {
    Optional<Lens> lens = lensFor(photo, station);
    if (lens.isEmpty()) {
      return otherShape(photo, fine, station);
    }
    FitPose.Prior prior = FitPose.Prior.of(lens.get(), station.cameraHeightMm());
    return new FindPassing(new LookAgain(photo, fine, prior), photo, prior, layouts).find();
  }

  /**
   * Places the boards in a fixed station's slots: on the board's own edges where the slot says so,
   * with a knock of the whole camera found and taken out where that is safe.
   *
   * @param photo the photo
   * @param station the station; its lens and slots are scaled to the photo's size
   * @param layouts the book's layouts by name
   * @return a board a slot, in order, held where its place is in doubt; slots of unknown layout are
   *     left over; a refusal where the photo cannot be the station's
   */
  public static FoundBoards inSlots(RgbImage photo, Station station, Map<String, Layout> layouts) {
    return inSlots(photo, Optional.empty(), station, layouts);
  }

  /**
   * Places the boards in a fixed station's slots in a photo that was averaged.
   *
   * @param photo the photo
   * @param fine all its pixels, where it was averaged
   * @param station the station; its lens and slots are scaled to the photo's size
   * @param layouts the book's layouts by name
   * @return a board a slot, in order, held where its place is in doubt
   */
  public static FoundBoards inSlots(
      RgbImage photo, Optional<FinePhoto> fine, Station station, Map<String, Layout> layouts) {
    Optional<Lens> lens = lensFor(photo, station);
    if (lens.isEmpty()) {
      return otherShape(photo, fine, station);
    }
    FitPose.Prior prior = FitPose.Prior.of(lens.get(), station.cameraHeightMm());
    PlaceSlots slots = new PlaceSlots(photo, station, prior, layouts);
    List<FoundBoard> boards = slots.place(station.slots());
    List<String> leftovers =
        station.slots().stream()
            .filter(s -> !layouts.containsKey(s.layout()))
            .map(s -> "slot " + s.name() + ": no layout named " + s.layout())
            .toList();
    return FoundBoards.found(boards, leftovers).withShift(slots.shift());
  }

  /**
   * Says whether a photo has the shape of those that a station takes; its size may differ.
   *
   * @param station the station
   * @param widthPx width of the upright photo, px
   * @param heightPx its height, px
   * @return whether it can be looked for boards in
   */
  public static boolean hasShapeOf(Station station, long widthPx, long heightPx) {
    double factor = (double) widthPx / station.imageWidthPx();
    double other = (double) heightPx / station.imageHeightPx();
    return Math.abs(factor / other - 1) <= ASPECT_FRACTION;
  }

  /** Returns the station's lens for the photo's size, or nothing where its shape differs. */
  static Optional<Lens> lensFor(RgbImage photo, Station station) {
    if (!hasShapeOf(station, photo.width(), photo.height())) {
      return Optional.empty();
    }
    double factor = (double) photo.width() / station.imageWidthPx();
    return Optional.of(factor == 1 ? station.lens() : station.lens().scaled(factor));
  }

  private static FoundBoards otherShape(RgbImage photo, Optional<FinePhoto> fine, Station station) {
    String reason =
        String.format(
            Locale.ROOT,
            "photo is %d x %d px, station %s takes %d x %d: not the same shape",
            fine.map(FinePhoto::widthPx).orElse(photo.width()),
            fine.map(FinePhoto::heightPx).orElse(photo.height()),
            station.name(),
            station.imageWidthPx(),
            station.imageHeightPx());
    return FoundBoards.refused(reason, OTHER_SHAPE_REMEDY);
  }
}
