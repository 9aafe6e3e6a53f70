// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.raftgauge.batch.station.StationCheckText;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;

/**
 * Says of each station what its file and its photos contradict each other in: another camera height
 * (a wrong height, lens or board size makes every area wrong by the same share, and no chart of its
 * own past shows it), and a second camera that told no heights.
 */
final class HeightNotes {

  private HeightNotes() {}

  /** Returns a line for each station that its photos contradict. */
  static List<String> of(List<PhotoMeasure> photos, CropBook book) {
    return book.stations().values().stream()
        .flatMap(s -> Stream.concat(note(s, photos).stream(), noHeights(s, photos)))
        .toList();
  }

  /** Returns a line for each reason why rafts have no heights of the second camera. */
  private static Stream<String> noHeights(Station station, List<PhotoMeasure> photos) {
    Map<String, Long> rafts =
        photos.stream()
            .filter(p -> p.station().equals(station.name()))
            .flatMap(p -> p.rafts().stream())
            .flatMap(r -> r.notes().stream())
            .filter(n -> n.startsWith(RaftMeasure.HEIGHTS_BY_MODEL))
            .collect(Collectors.groupingBy(n -> n, TreeMap::new, Collectors.counting()));
    return rafts.entrySet().stream()
        .map(
            e ->
                String.format(
                    Locale.ROOT,
                    "station %s, %d %s: %s",
                    station.name(),
                    e.getValue(),
                    e.getValue() == 1 ? "raft" : "rafts",
                    e.getKey()));
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
