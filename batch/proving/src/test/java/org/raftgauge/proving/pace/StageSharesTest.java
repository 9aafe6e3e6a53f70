// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.photo.DecodePhoto;

class StageSharesTest {
  @Test
  void aThreadThatDecodesIsFoundDecoding() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(1500, 1500, BufferedImage.TYPE_INT_RGB), "jpg", bytes);
    byte[] jpeg = bytes.toByteArray();

    Map<String, Double> shares =
        StageShares.of(
            () -> {
              for (int i = 0; i < 40; i++) {
                DecodePhoto.decode(jpeg);
              }
            });

    assertEquals(1, shares.values().stream().mapToDouble(s -> s).sum(), 1e-9);
    assertTrue(shares.get("decoding and averaging") > 0.5, shares.toString());
    assertEquals(0, shares.get("telling leaf"));
  }
}
