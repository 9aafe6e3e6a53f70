// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
  }

  @Test
  void gapsOverThePlugThatASoftPhotoFillsAreTakenOut() throws IOException {
    // Four leaves about a hole, the plug in the gaps between them. Smeared by 1.6 px, the gaps are
    // more leaf than plug.
    DrawnPhoto drawn = DrawnPhoto.upright().tagged("DR-1");
    for (int leaf = 0; leaf < 4; leaf++) {
      double angle = Math.PI / 4 + leaf * Math.PI / 2;
      drawn.disc(300 + 13 * Math.cos(angle), 510 + 13 * Math.sin(angle), 8, LEAF);
    }
    double sharp = areaCm2(drawn.png());
    double soft = areaCm2(smeared(drawn.png(), 1.6));
    assertEquals(sharp, soft, 0.05 * sharp); // 11 % more without it
  }

  private double areaCm2(byte[] photo) {
    PhotoFacts facts = DrawnFarm.manifest(DrawnFarm.NAME, "bench", "");
    return MeasurePhoto.measure(photo, facts, DrawnFarm.book(folder))
        .measure()
        .rafts()
        .get(0)
        .sites()
        .stream()
        .mapToDouble(s -> s.projectedAreaCm2().orElse(0))
        .max()
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
