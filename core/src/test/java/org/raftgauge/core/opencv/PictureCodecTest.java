// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.RgbImage;

class PictureCodecTest {

  @Test
  void levelsComeInTheOrderRedGreenBlue() throws IOException {
    RgbImage image = PictureCodec.decode(png(0x0a141e)).orElseThrow();
    assertEquals(20, image.width());
    assertEquals(10, image.height());
    assertArrayEquals(
        new int[] {10, 20, 30},
        new int[] {image.value(7, 3, 0), image.value(7, 3, 1), image.value(7, 3, 2)});
  }

  @Test
  void whatIsNoPictureGivesNone() {
    assertEquals(Optional.empty(), PictureCodec.decode(new byte[0]));
    assertEquals(Optional.empty(), PictureCodec.decode(new byte[100]));
  }

  @Test
  void everyScopeIsClosedAgainAfterGoodAndBadFiles() throws IOException {
    byte[] good = png(0x808080);
    byte[] bad = good.clone();
    bad[30] ^= 1;
    long before = MatScope.openScopes();
    for (int i = 0; i < 200; i++) {
      PictureCodec.decode(i % 2 == 0 ? good : bad);
    }
    assertEquals(before, MatScope.openScopes());
  }

  private static byte[] png(int rgb) throws IOException {
    BufferedImage image = new BufferedImage(20, 10, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < 200; i++) {
      image.setRGB(i % 20, i / 20, rgb);
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "png", bytes);
    return bytes.toByteArray();
  }
}
