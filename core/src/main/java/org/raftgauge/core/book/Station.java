// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The place where overhead photos are taken.
 *
 * @param name as the book names it (its file's name)
 * @param kind passing or fixed
 * @param cameras 1 or 2
 * @param imageWidthPx width of its photos, px
 * @param imageHeightPx height of its photos, px
 * @param lens of its (first) camera, for photos of that size
 * @param cameraHeightMm height over the deck plane, mm, above 0
 * @param slots its slots, for a fixed station; empty for a passing one
 * @param clockOffset what to add to the camera's clock to get the farm's time
 * @param changedOn evenings from which camera, lens, light or place were changed on purpose, in
 *     order: the past before one tells nothing of the station after it
 * @param second its second camera, where it has one
 */
public record Station(
    String name,
    Kind kind,
    int cameras,
    int imageWidthPx,
    int imageHeightPx,
    Lens lens,
    double cameraHeightMm,
    List<Slot> slots,
    Duration clockOffset,
    List<LocalDate> changedOn,
    Optional<SecondCamera> second) {

  /** How rafts and camera meet. */
  public enum Kind {
    /** Rafts come to the camera, with corner markers and a tag. */
    PASSING,
    /** The camera hangs over a pond; boards lie in slots. */
    FIXED
  }

  /** Copies the slots. */
  public Station {
    slots = List.copyOf(slots);
    changedOn = List.copyOf(changedOn);
  }

  /**
   * Makes a station of one camera that was never changed.
   *
   * @param name as the book names it
   * @param kind passing or fixed
   * @param cameras 1 or 2
   * @param imageWidthPx px
   * @param imageHeightPx px
   * @param lens for photos of that size
   * @param cameraHeightMm mm, above 0
   * @param slots its slots; empty for a passing one
   * @param clockOffset what to add to the camera's clock
   */
  public Station(
      String name,
      Kind kind,
      int cameras,
      int imageWidthPx,
      int imageHeightPx,
      Lens lens,
      double cameraHeightMm,
      List<Slot> slots,
      Duration clockOffset) {
    this(
        name,
        kind,
        cameras,
        imageWidthPx,
        imageHeightPx,
        lens,
        cameraHeightMm,
        slots,
        clockOffset,
        List.of(),
        Optional.empty());
  }

  /** Returns what measuring a photo needs of it: all but when it was changed. */
  public Station forMeasuring() {
    return new Station(
        name,
        kind,
        cameras,
        imageWidthPx,
        imageHeightPx,
        lens,
        cameraHeightMm,
        slots,
        clockOffset,
        List.of(),
        second);
  }

  /**
   * Says whether a picture is of this station's second camera.
   *
   * @param photo its path below the photo folder
   */
  public boolean tookWithSecond(String photo) {
    return second.filter(s -> s.took(photo)).isPresent();
  }
}
