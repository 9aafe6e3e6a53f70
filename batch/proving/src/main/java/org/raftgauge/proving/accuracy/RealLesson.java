// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.measure.LightPhoto;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.teach.Labels;
import org.raftgauge.core.teach.Lesson;

/** Real photos with hand-drawn masks as lessons, and how well taught models do on them. */
final class RealLesson {
  private final RealSet set;
  private final CropBook book;
  private final List<Path> photos;

  RealLesson(Path folder, RealSet set) throws IOException {
    this.set = set;
    this.book = ScoreRealCanopy.book(set);
    this.photos = set.photos(folder);
  }

  int count() {
    return photos.size();
  }

  /** Draws a lesson from a photo: its mask is painted as green leaf on board. */
  Lesson lesson(int photo) throws IOException {
    boolean[] mask = set.mask(photos.get(photo));
    byte[] painted = new byte[3 * mask.length];
    for (int i = 0; i < mask.length; i++) {
      int rgb = (mask[i] ? Tissue.GREEN : Tissue.BOARD).rgb();
      painted[3 * i] = (byte) (rgb >> 16);
      painted[3 * i + 1] = (byte) (rgb >> 8);
      painted[3 * i + 2] = (byte) rgb;
    }
    Labels labels = Labels.read(RgbImage.of(set.widthPx(), set.heightPx(), painted));
    return Lesson.of(Table.fileName(photos.get(photo).toString()), List.of(board(photo)), labels);
  }

  private LitBoard board(int photo) throws IOException {
    Path file = photos.get(photo);
    return LightPhoto.light(Files.readAllBytes(file), ScoreRealCanopy.facts(set, file), book)
        .boards()
        .get(0);
  }

  /** Compares what models find on a photo with its mask, in the models' order. */
  List<RealPhotoScore.Agreement> score(int photo, List<TaughtColour> models) throws IOException {
    boolean[] truth = set.mask(photos.get(photo));
    LitBoard board = board(photo);
    List<RealPhotoScore.Agreement> scores = new ArrayList<>();
    for (TaughtColour model : models) {
      Canopy canopy = board.canopy(LeafModel.taught(model));
      boolean[] found = new boolean[truth.length];
      int marginX = (canopy.width() - set.widthPx()) / 2;
      int marginY = (canopy.height() - set.heightPx()) / 2;
      for (int i = 0; i < found.length; i++) {
        int x = i % set.widthPx() + marginX;
        int y = Math.floorDiv(i, set.widthPx()) + marginY;
        found[i] = (canopy.coverage()[y * canopy.width() + x] & 0xff) >= 128;
      }
      scores.add(RealPhotoScore.Agreement.of(found, truth));
    }
    return scores;
  }
}
