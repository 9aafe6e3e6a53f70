// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.Kernel;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.DrawnPhoto;
import org.raftgauge.core.plane.EdgeBlur;

/** How soft a photo is beside sharp ones. */
class PhotoViewsTest {
  /** Lettuce in linear light. */
  private static final double[] LEAF = {0.117, 0.296, 0.034};

  private static final RgbImage PHOTO = RgbImage.of(1, 1, new byte[3]);

  @TempDir private Path folder;

  @Test
  void onlyBlurBeyondThatOfSharpPhotosIsSoft() {
    // Sharp photos reach 0.85 px.
    assertEquals(1.15, softPx(OptionalDouble.of(2)), 1e-12);
    assertEquals(0, softPx(OptionalDouble.of(0.6)));
  }

  @Test
  void aPhotoWhoseBlurIsUnknownCountsAsSharp() {
    assertEquals(0, softPx(OptionalDouble.empty()));
    assertEquals(0, PhotoViews.of(PHOTO).softPx());
  }

  @Test
  void plantsOfASoftPhotoAreKnownLessWell() throws IOException {
    // A disc of 40 mm has an outline of 251 mm. Smeared by 2.5 px where 0.85 is usual, it may lie
    // 1.65 px in or out: 4.15 cm2 for each mm that a pixel is wide. The blur told is that of linear
    // light and somewhat smaller than the one made here, of sRGB.
    byte[] sharp = DrawnPhoto.upright().tagged("DR-1").disc(300, 510, 40, LEAF).png();
    double mmPerPx = raft(sharp).mmPerPx();
    double clear = seCm2(raft(sharp));
    double soft = seCm2(raft(smeared(sharp, 2.5)));

    assertTrue(clear < 2, "" + clear);
    assertEquals(Math.hypot(clear, 4.15 * mmPerPx), soft, 0.9);
  }

  private RaftMeasure raft(byte[] photo) {
    PhotoFacts facts = DrawnFarm.manifest(DrawnFarm.NAME, "bench", "");
    return MeasurePhoto.measure(photo, facts, DrawnFarm.book(folder)).measure().rafts().get(0);
  }

  private static double seCm2(RaftMeasure raft) {
    return raft.sites().stream()
        .filter(s -> s.projectedAreaCm2().orElse(0) > 0)
        .mapToDouble(s -> s.projectedAreaSeCm2().orElseThrow())
        .findFirst()
        .orElseThrow();
  }

  /** Returns a picture blurred by a Gaussian of so many px. */
  private static byte[] smeared(byte[] png, double px) throws IOException {
    int reach = (int) Math.ceil(3 * px);
    float[] row = new float[2 * reach + 1];
    double sum = 0;
    for (int i = -reach; i <= reach; i++) {
      sum += Math.exp(-i * i / (2 * px * px));
    }
    for (int i = -reach; i <= reach; i++) {
      row[i + reach] = (float) (Math.exp(-i * i / (2 * px * px)) / sum);
    }
    BufferedImage picture = ImageIO.read(new ByteArrayInputStream(png));
    BufferedImage rows = new ConvolveOp(new Kernel(row.length, 1, row)).filter(picture, null);
    BufferedImage both = new ConvolveOp(new Kernel(1, row.length, row)).filter(rows, null);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(both, "png", out);
    return out.toByteArray();
  }

  private static double softPx(OptionalDouble blurPx) {
    return PhotoViews.of(PHOTO, Optional.empty(), new EdgeBlur(blurPx, List.of())).softPx();
  }
}
