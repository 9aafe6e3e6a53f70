// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.raftgauge.batch.station.StationCheckText;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.plane.PoseSource;

/**
 * Says of each station that its photos put the camera at another height than its file: a wrong
 * height, lens or board size makes every area wrong by the same share, and no chart of its own past
 * shows it.
 */
final class HeightNotes {

  private HeightNotes() {}

  /** Returns a line for each station that its photos contradict. */
  static List<String> of(List<PhotoMeasure> photos, CropBook book) {
    return book.stations().values().stream().flatMap(s -> note(s, photos).stream()).toList();
  }

  private static Optional<String> note(Station station, List<PhotoMeasure> photos) {
    double[] heights =
        photos.stream()
            .filter(p -> p.station().equals(station.name()) && p.status() == PhotoStatus.USED)
            .flatMap(HeightNotes::placed)
            .mapToDouble(Double::doubleValue)
            .sorted()
            .toArray();
    Optional<Double> middle =
        heights.length == 0 ? Optional.empty() : Optional.of(heights[heights.length / 2]);
    return StationCheckText.height(station, middle)
        .map(line -> "station " + station.name() + ": " + line.strip());
  }

  /** Heights of the camera over boards that were placed by something seen. */
  private static Stream<Double> placed(PhotoMeasure photo) {
    return photo.rafts().stream()
        .filter(r -> r.poseSource() != PoseSource.STATION && r.held().isEmpty())
        .map(r -> r.cameraHeightMm());
  }
}
