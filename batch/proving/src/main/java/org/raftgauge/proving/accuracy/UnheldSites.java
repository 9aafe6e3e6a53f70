// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.measure.LightPhoto;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.site.Ground;
import org.raftgauge.core.site.MeasureSites;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Measures rendered rafts as if nothing were ever held: what would have been said of sites that the
 * program holds. Boards are known by their exact poses.
 */
final class UnheldSites {
  private static final double POSE_ERROR_MM = 1;

  private final Path set;
  private final CropBook book;
  private final Map<String, String> cropOfRaft = new HashMap<>();
  private final List<PosedRaft> rafts;

  UnheldSites(Path set) throws IOException {
    this.set = set;
    this.book = CropBook.read(set.resolve("book")).book();
    this.rafts = PosedRaft.readCsv(set.resolve("poses.csv"));
    for (CSVRecord row : Table.read(set.resolve("truth.csv"))) {
      cropOfRaft.put(Table.cell(row, "raft"), Table.cell(row, "crop"));
    }
  }

  /**
   * Measures the boards of a photo.
   *
   * @param photo its file name, without folders
   * @return areas by site, of boards that were found
   * @throws IOException if a file cannot be read
   */
  Map<SiteKey, Double> areasCm2(String photo) throws IOException {
    List<PosedRaft> here =
        rafts.stream().filter(r -> Table.fileName(r.photo()).equals(photo)).toList();
    Map<SiteKey, Double> areas = new HashMap<>();
    Path file = set.resolve("photos").resolve(here.get(0).photo());
    for (LitBoard board :
        LightPhoto.light(Files.readAllBytes(file), facts(here.get(0).photo()), book).boards()) {
      PosedRaft raft = nearest(here, board.pose().foot());
      for (SiteMeasure site : sites(board, book.crops().get(cropOfRaft.get(raft.raft())))) {
        areas.put(
            new SiteKey(photo, raft.raft(), site.site().toString()),
            site.visibleAreaCm2().orElseThrow());
      }
    }
    return areas;
  }

  private static List<SiteMeasure> sites(LitBoard board, Crop crop) {
    int n = board.layout().grid().sites().size();
    LeafModel model =
        LeafModel.named(crop.colourModel()).orElseGet(() -> LeafModel.taught(crop.taught().get()));
    Ground ground =
        new Ground(
            board.deck(),
            board.layout(),
            board.pose(),
            POSE_ERROR_MM,
            Collections.nCopies(n, crop.heightModel()),
            Collections.nCopies(n, crop.limits().closedOutline()));
    return MeasureSites.of(ground, board.canopy(model)).sites();
  }

  /** Finds the raft over which the camera stands so. */
  private static PosedRaft nearest(List<PosedRaft> rafts, PointMm foot) {
    List<PosedRaft> sorted = new ArrayList<>(rafts);
    sorted.sort((a, b) -> Double.compare(distance(a, foot), distance(b, foot)));
    return sorted.get(0);
  }

  private static double distance(PosedRaft raft, PointMm foot) {
    double[] at = new double[2];
    for (int axis = 0; axis < 2; axis++) {
      for (int k = 0; k < 3; k++) {
        at[axis] -= raft.rotation().get(3 * k + axis) * raft.shiftMm().get(k);
      }
    }
    return Math.hypot(at[0] - foot.xMm(), at[1] - foot.yMm());
  }

  private PhotoFacts facts(String photo) throws IOException {
    for (CSVRecord row : Table.read(set.resolve("photos").resolve("manifest.csv"))) {
      if (Table.cell(row, "photo").equals(photo)) {
        return new PhotoFacts(
            photo,
            Optional.of(Table.cell(row, "taken_at")),
            Optional.of(Table.cell(row, "station")),
            Optional.empty(),
            Optional.empty());
      }
    }
    return PhotoFacts.of(photo);
  }
}
