// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.raftgauge.core.book.BookFolder;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.DrawnPhoto;

/** A crop book for drawn photos: two passing stations, one board, flat crops. */
final class DrawnFarm {
  static final String NAME = "2026-04-10_DR-1.png";

  private DrawnFarm() {}

  /** Writes the book into a folder of a test. */
  static BookFolder folder(Path folder) {
    return BookFolder.in(folder)
        .with(
            "layouts.yaml",
            """
            layouts:
              deck-18:
                board: {width_mm: 600, length_mm: 1200}
                sites: {rows: 6, columns: 3, first_x_mm: 120, first_y_mm: 150, pitch_x_mm: 180, pitch_y_mm: 180}
                markers: {family: tag36h11, side_mm: 36, centres_mm: [[30, 30], [570, 30], [570, 1170], [30, 1170]]}
                tag: {x_mm: 300, y_mm: 42, side_mm: 60}
            """)
        .with(
            "crops.yaml",
            """
            crops:
              basil:
                colour_model: green-leaf
                height_model: {scale_mm: 0, exponent: 0.5}
              oakleaf:
                colour_model: red-leaf
                height_model: {scale_mm: 0, exponent: 0.5}
              kale:
                colour_model: green-leaf
                height_model: {scale_mm: 5.2, exponent: 0.5}
            """)
        .with("stations/bench.yaml", DrawnPhoto.station(600, 1000))
        .with("stations/square.yaml", DrawnPhoto.station(1000, 1000))
        .without("stations/over-pond.yaml")
        .with(
            "plantings.csv",
            """
            raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot
            DR-1,P1,1,basil,,deck-18,,2026-03-20,2026-04-01,,,L1
            DR-2,P1,2,basil,,deck-18,A1-C3,2026-03-20,2026-04-01,,,L2
            DR-2,P1,2,oakleaf,,deck-18,D1-F3,2026-03-20,2026-04-01,,,L3
            DR-3,P1,3,kale,,deck-18,,2026-03-20,2026-04-01,,,L4
            """);
  }

  static CropBook book(Path folder) {
    return folder(folder).sound();
  }

  /** Facts of a photo of which a manifest gives station and raft where not empty. */
  static PhotoFacts manifest(String photo, String station, String raft) {
    return new PhotoFacts(
        photo,
        Optional.empty(),
        Optional.of(station).filter(s -> !s.isEmpty()),
        Optional.empty(),
        Optional.of(raft).filter(r -> !r.isEmpty()));
  }

  /** Writes a drawn photo as a PNG file. */
  static byte[] png(RgbImage photo) throws IOException {
    BufferedImage image =
        new BufferedImage(photo.width(), photo.height(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < photo.height(); y++) {
      for (int x = 0; x < photo.width(); x++) {
        int rgb = photo.value(x, y, 0) << 16 | photo.value(x, y, 1) << 8 | photo.value(x, y, 2);
        image.setRGB(x, y, rgb);
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }
}
