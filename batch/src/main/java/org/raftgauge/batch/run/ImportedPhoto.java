// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

/** Makes a photo's measure of rows that were measured elsewhere. */
final class ImportedPhoto {
  private static final String NOTE = "measured elsewhere";

  private ImportedPhoto() {}

  /**
   * Makes a photo.
   *
   * @param rows of one photo, at least one
   * @return its measure, known by the hash of the rows in whatever order
   */
  static PhotoMeasure of(List<SiteCells> rows) {
    Map<String, List<SiteCells>> rafts = new TreeMap<>();
    rows.forEach(r -> rafts.computeIfAbsent(r.raft(), k -> new ArrayList<>()).add(r));
    SiteCells first = rows.get(0);
    return new PhotoMeasure(
        first.photo(),
        Digest.of(rows.stream().map(SiteCells::identity).sorted().toArray(String[]::new)),
        first.station(),
        Optional.of(first.takenAt()),
        "",
        PhotoStatus.USED,
        "",
        "",
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        rafts.entrySet().stream().map(e -> raft(e.getKey(), e.getValue())).toList());
  }

  /** Makes a raft; how its board was placed is not known, and its sites are named as given. */
  private static RaftMeasure raft(String raft, List<SiteCells> rows) {
    List<SiteMeasure> sites =
        rows.stream()
            .sorted((a, b) -> a.site().compareTo(b.site()))
            .map(r -> r.numbers().measure(r.site(), r.row().text("reason")))
            .toList();
    double quality = sites.stream().mapToDouble(SiteMeasure::quality).average().orElse(0);
    return new RaftMeasure(
        Optional.of(raft),
        rows.get(0).row().text("slot"),
        rows.get(0).layout(),
        PoseSource.STATION,
        0,
        0,
        0,
        true,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        sites,
        quality,
        "",
        List.of(),
        List.of(NOTE),
        List.of());
  }
}
