// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.batch.teaching.PhotoFile;
import org.raftgauge.batch.teaching.TeachRequest;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.measure.LightPhoto;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.teach.HoleLessons;
import org.raftgauge.core.teach.Labels;
import org.raftgauge.proving.set.RenderSet;
import org.raftgauge.proving.set.SetName;

/** Teaches what tells leaf from what fills planting holes, from rendered photos. */
public final class TeachHoles {
  /** Sizes of the photos: usual ones, and such as old cameras take. */
  private static final Map<String, Double> MEGAPIXELS = Map.of("fine", 2.0, "coarse", 0.6);

  /**
   * Coverage, 0..255, from which leaf touches a pixel: how much of it is leaf is told later, from
   * all that it touches.
   */
  private static final int TOUCHED = 32;

  private final HoleLessons lessons = new HoleLessons();
  private int boards;

  private TeachHoles() {}

  /**
   * Teaches from photos of boards with fillings drawn at random; this takes half an hour.
   *
   * @param work folder for the photos; those of the same seed and number in it are used again
   * @param seed of the photos
   * @param photos how many of each size
   * @return the text of the network's file
   * @throws IOException if a file cannot be read or written
   * @throws InputException if a photo cannot be read
   */
  public static String from(Path work, long seed, int photos) throws IOException, InputException {
    TeachHoles teach = new TeachHoles();
    for (String size : List.of("fine", "coarse")) {
      SetName.Order order = new SetName.Order(seed, photos, MEGAPIXELS.get(size));
      teach.add(work.resolve(size + "-" + seed + "-" + photos), order);
    }
    return teach.fitted(seed);
  }

  private void add(Path set, SetName.Order order) throws IOException, InputException {
    if (!Files.exists(set.resolve("truth.csv"))) {
      RenderSet.make(set, SetName.DRAWN_FILLINGS, order, photo -> {});
    }
    Map<String, String> crops = new HashMap<>();
    for (CSVRecord row : Table.read(set.resolve("truth.csv"))) {
      crops.put(Table.cell(row, "photo"), Table.cell(row, "crop"));
    }
    CropBook book = CropBook.read(set.resolve("book")).book();
    for (TeachRequest.Pair pair : PaintTruth.of(set, set.resolve("painted"), TOUCHED)) {
      LightPhoto.Result lit =
          LightPhoto.light(
              PhotoFile.bytes(pair.photo()), PhotoFile.facts(pair.photo(), Optional.empty()), book);
      Labels labels = Labels.read(PhotoFile.picture(pair.labels()));
      String photo = set.resolve("photos").relativize(pair.photo()).toString().replace('\\', '/');
      boolean red = crops.get(photo).startsWith("red-") || crops.get(photo).startsWith("purple-");
      for (LitBoard board : lit.boards()) {
        lessons.add(board, labels, red ? LeafModel.RED_LEAF : LeafModel.GREEN_LEAF);
        boards++;
      }
    }
  }

  private String fitted(long seed) {
    return String.format(
            Locale.ROOT,
            "# Tells leaf from what fills planting holes; made by prove holes from %d rendered"
                + " boards%n# (seed %d, %d pixels), none of them real.%n",
            boards,
            seed,
            lessons.size())
        + lessons.fit();
  }
}
