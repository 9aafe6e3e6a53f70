// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.raftgauge.core.measure.LightField;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoWitness;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.CameraShift;
import org.raftgauge.core.plane.PoseSource;

/** Writes {@code photos.csv}: one row a photo, whatever became of it. */
public final class PhotosTable {
  private static final List<String> HEADER =
      List.of(
          "photo",
          "sha256",
          "station",
          "taken_at",
          "rafts",
          "status",
          "reason",
          "remedy",
          "mm_per_px",
          "pose_error_mm",
          "sharpness",
          "exposure_clipped_fraction",
          "light_cast",
          "clock_doubt",
          "camera_height_mm",
          "shift_right_px",
          "shift_down_px",
          "turn_deg",
          "edge_blur_px",
          "haze_fraction",
          "board_light",
          "light_across_ln",
          "light_down_ln",
          "vignetting_fraction",
          "pair_rows_px");

  private PhotosTable() {}

  /**
   * Writes the table, sorted by photo.
   *
   * <p>Where a photo shows several rafts, {@code rafts} lists their ids ({@code ?} for one that
   * nothing told), {@code mm_per_px} is their mean and {@code pose_error_mm} the largest.
   *
   * @param photos the photos of the run
   * @return the text of the file
   */
  public static String csv(List<PhotoMeasure> photos) {
    CsvText csv = new CsvText(HEADER);
    photos.stream()
        .sorted(Comparator.comparing(PhotoMeasure::photo))
        .forEach(photo -> row(csv, photo));
    return csv.toString();
  }

  private static void row(CsvText csv, PhotoMeasure photo) {
    csv.text(photo.photo())
        .text(photo.sha256())
        .text(photo.station())
        .time(photo.takenAt())
        .list(photo.rafts().stream().map(r -> r.raft().orElse("?")).toList())
        .text(photo.status().name().toLowerCase(Locale.ROOT))
        .text(photo.reason())
        .text(photo.remedy())
        .number(mean(photo), 4)
        .number(largest(photo), 2)
        .number(photo.sharpness(), 3)
        .number(photo.exposureClippedFraction(), 4)
        .number(photo.lightCast(), 3)
        .text(photo.clockDoubt());
    witness(csv, photo);
    csv.endRow();
  }

  private static void witness(CsvText csv, PhotoMeasure photo) {
    PhotoWitness witness = photo.witness();
    csv.number(heightMm(photo), 1)
        .number(part(witness.shift(), CameraShift::xPx), 2)
        .number(part(witness.shift(), CameraShift::yPx), 2)
        .number(part(witness.shift(), CameraShift::turnDeg), 3)
        .number(witness.blur().blurPx(), 3)
        .number(witness.hazeFraction(), 4)
        .number(part(witness.light(), LightField::level), 3)
        .number(part(witness.light(), LightField::acrossLn), 3)
        .number(part(witness.light(), LightField::downLn), 3)
        .number(part(witness.light(), LightField::vignettingFraction), 3)
        .number(witness.pairRowsPx(), 3);
  }

  /** Returns the mean over the rafts that were placed by something seen. */
  private static OptionalDouble heightMm(PhotoMeasure photo) {
    return photo.rafts().stream()
        .filter(r -> r.poseSource() != PoseSource.STATION)
        .mapToDouble(RaftMeasure::cameraHeightMm)
        .average();
  }

  private static <T> OptionalDouble part(Optional<T> whole, ToDoubleFunction<T> part) {
    return whole.stream().mapToDouble(part).findFirst();
  }

  private static OptionalDouble mean(PhotoMeasure photo) {
    return photo.rafts().stream().mapToDouble(RaftMeasure::mmPerPx).average();
  }

  private static OptionalDouble largest(PhotoMeasure photo) {
    return photo.rafts().stream().mapToDouble(RaftMeasure::poseErrorMm).max();
  }
}
