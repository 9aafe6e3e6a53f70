// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one photo says, whatever became of it: the whole outcome of the first pass, made of plain
 * values.
 *
 * @param photo its path below the photo folder
 * @param sha256 of its bytes, 64 hex digits
 * @param station the station it was taken at, or empty where unknown
 * @param takenAt when, where known
 * @param clockDoubt why the clock is doubted, or empty
 * @param status what became of it ({@code KNOWN} and {@code REPLACED} are only settled later)
 * @param reason why, or empty where all is well
 * @param remedy what to do, or empty
 * @param sharpness 0..1, where judged
 * @param exposureClippedFraction share of clipped pixels, 0..1, where judged
 * @param lightCast distance of the board's colour from neutral, 0..1, where judged
 * @param rafts the rafts found in it
 * @param witness what it says of camera, lens and lamps
 */
public record PhotoMeasure(
    String photo,
    String sha256,
    String station,
    Optional<OffsetDateTime> takenAt,
    String clockDoubt,
    PhotoStatus status,
    String reason,
    String remedy,
    OptionalDouble sharpness,
    OptionalDouble exposureClippedFraction,
    OptionalDouble lightCast,
    List<RaftMeasure> rafts,
    PhotoWitness witness) {

  /** Why a picture of a second camera has no measures of its own. */
  public static final String OF_SECOND_CAMERA =
      "of the second camera: used with the first camera's photo of the same moment";

  /** Copies the rafts. */
  public PhotoMeasure {
    rafts = List.copyOf(rafts);
  }

  /**
   * Makes a measure that says nothing of camera, lens and lamps.
   *
   * @param photo its path below the photo folder
   * @param sha256 of its bytes
   * @param station the station, or empty
   * @param takenAt when, where known
   * @param clockDoubt why the clock is doubted, or empty
   * @param status what became of it
   * @param reason why, or empty
   * @param remedy what to do, or empty
   * @param sharpness 0..1
   * @param exposureClippedFraction 0..1
   * @param lightCast 0..1
   * @param rafts the rafts found in it
   */
  public PhotoMeasure(
      String photo,
      String sha256,
      String station,
      Optional<OffsetDateTime> takenAt,
      String clockDoubt,
      PhotoStatus status,
      String reason,
      String remedy,
      OptionalDouble sharpness,
      OptionalDouble exposureClippedFraction,
      OptionalDouble lightCast,
      List<RaftMeasure> rafts) {
    this(
        photo,
        sha256,
        station,
        takenAt,
        clockDoubt,
        status,
        reason,
        remedy,
        sharpness,
        exposureClippedFraction,
        lightCast,
        rafts,
        PhotoWitness.NONE);
  }

  /**
   * Returns the same with another say.
   *
   * @param newStatus what became of it
   * @param why the reason, or empty
   * @param toDo the remedy, or empty
   */
  public PhotoMeasure withSay(PhotoStatus newStatus, String why, String toDo) {
    return new PhotoMeasure(
        photo,
        sha256,
        station,
        takenAt,
        clockDoubt,
        newStatus,
        why,
        toDo,
        sharpness,
        exposureClippedFraction,
        lightCast,
        rafts,
        witness);
  }

  /**
   * Returns the same with other rafts.
   *
   * @param newRafts in the order of this one's
   */
  public PhotoMeasure withRafts(List<RaftMeasure> newRafts) {
    return new PhotoMeasure(
        photo,
        sha256,
        station,
        takenAt,
        clockDoubt,
        status,
        reason,
        remedy,
        sharpness,
        exposureClippedFraction,
        lightCast,
        newRafts,
        witness);
  }

  /**
   * Returns the same with another time.
   *
   * @param at when it was taken
   * @param doubt why that is doubted, or empty
   */
  public PhotoMeasure taken(Optional<OffsetDateTime> at, String doubt) {
    return new PhotoMeasure(
        photo,
        sha256,
        station,
        at,
        doubt,
        status,
        reason,
        remedy,
        sharpness,
        exposureClippedFraction,
        lightCast,
        rafts,
        witness);
  }
}
