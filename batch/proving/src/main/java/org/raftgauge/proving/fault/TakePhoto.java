// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.proving.render.Develop;
import org.raftgauge.proving.render.Exposure;
import org.raftgauge.proving.render.RenderPhoto;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.set.PictureFiles;

/** Photographs a scene and measures the photo as the program does. */
final class TakePhoto {
  /** Radius of a drop, share of the picture's width. */
  private static final double DROP_SHARE = 0.13;

  private static final int DROP_BLUR_PX = 3;

  private TakePhoto() {}

  /** Renders, develops and writes a photo. */
  static void write(PondStation station, Scene scene, Night night, Path file) throws IOException {
    Exposure view = RenderPhoto.render(scene, night.camera(station), night.light());
    RgbImage photo = Develop.develop(view, night.shot());
    RgbImage seen = night.drop().map(drop -> wet(photo, drop)).orElse(photo);
    PictureFiles.writeJpeg(seen, file, night.shot().finish().jpegQuality());
  }

  /** Measures a photo of an evening. */
  static PhotoMeasure measure(byte[] jpeg, CropBook book, String station, LocalDate evening) {
    PhotoFacts facts =
        new PhotoFacts(
            station + "/" + evening + ".jpg",
            Optional.of(evening + "T20:00:00+00:00"),
            Optional.of(station),
            Optional.empty(),
            Optional.empty());
    return MeasurePhoto.measure(jpeg, facts, book).measure();
  }

  /** Smears a disc of the picture. */
  private static RgbImage wet(RgbImage photo, Night.Drop drop) {
    int w = photo.width();
    int h = photo.height();
    byte[] in = photo.rgb();
    byte[] out = in.clone();
    for (int i = 0; i < w * h; i++) {
      int x = i % w;
      int y = Math.floorDiv(i, w);
      if (Math.hypot(x - drop.x() * w, y - drop.y() * h) < DROP_SHARE * w) {
        for (int c = 0; c < 3; c++) {
          out[3 * i + c] = (byte) Math.round(mean(photo, x, y, c));
        }
      }
    }
    return RgbImage.of(w, h, out);
  }

  private static double mean(RgbImage photo, int x, int y, int channel) {
    double sum = 0;
    int n = 0;
    for (int dy = -DROP_BLUR_PX; dy <= DROP_BLUR_PX; dy++) {
      for (int dx = -DROP_BLUR_PX; dx <= DROP_BLUR_PX; dx++) {
        boolean in =
            x + dx >= 0 && y + dy >= 0 && x + dx < photo.width() && y + dy < photo.height();
        sum += in ? photo.value(x + dx, y + dy, channel) : 0;
        n += in ? 1 : 0;
      }
    }
    return sum / n;
  }
}
