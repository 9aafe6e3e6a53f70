// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.awt.geom.Path2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.problem.InputException;
import org.raftgauge.core.teach.FirstPainting;

/** Writes a pre-painted picture of a photo, for a person to mend. */
public final class StartPainting {

  private StartPainting() {}

  /**
   * Measures a photo by the book and paints what was found.
   *
   * @param bookFolder folder of the crop book
   * @param photo the photo's file
   * @param station of photos that nothing else places
   * @return the painted picture's file, beside the photo
   * @throws InputException if the photo cannot be measured, or there is a painted picture already
   * @throws IOException if the picture cannot be written
   */
  public static Path write(Path bookFolder, Path photo, Optional<String> station)
      throws InputException, IOException {
    Path file = TeachRequest.Pair.labelsOf(photo);
    if (Files.exists(file)) {
      throw PhotoFile.wrong(
          file, "is there already and may hold your work", "move it away to start anew");
    }
    CropBook book = CropBook.read(bookFolder).book();
    PhotoResult result =
        MeasurePhoto.measure(PhotoFile.bytes(photo), PhotoFile.facts(photo, station), book);
    if (result.canopy().isEmpty()) {
      throw PhotoFile.wrong(photo, result.measure().reason(), result.measure().remedy());
    }
    RgbImage picture = result.picture().orElseThrow();
    RgbImage painted =
        FirstPainting.of(picture, result.canopy().get(), onBoards(picture, result.drawings()));
    PalettePicture.write(painted, file);
    return file;
  }

  private static boolean[] onBoards(RgbImage picture, List<PhotoResult.RaftDrawing> boards) {
    boolean[] on = new boolean[picture.width() * picture.height()];
    for (PhotoResult.RaftDrawing board : boards) {
      Path2D outline = new Path2D.Double();
      List<PointPx> corners = board.boardCornersPx();
      outline.moveTo(corners.get(0).xPx(), corners.get(0).yPx());
      corners.forEach(c -> outline.lineTo(c.xPx(), c.yPx()));
      outline.closePath();
      for (int i = 0; i < on.length; i++) {
        on[i] |= outline.contains(i % picture.width(), Math.floorDiv(i, picture.width()));
      }
    }
    return on;
  }
}
