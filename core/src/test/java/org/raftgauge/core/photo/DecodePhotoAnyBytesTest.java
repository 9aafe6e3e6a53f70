// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DecodePhotoAnyBytesTest {
  private static final BufferedImage NOISE = TestPictures.noise(160, 120, 1);
  private static final byte[] JPEG = PhotoBytes.write(NOISE, "jpg");
  private static final byte[] PNG = PhotoBytes.write(NOISE, "png");
  private static final byte[] TIFF = PhotoBytes.tiff(NOISE, 1, 8, ByteOrder.LITTLE_ENDIAN);

  @Test
  void randomBytesNeverThrow() {
    Random random = new Random(20260301);
    String[] starts = {"", "\u00ff\u00d8\u00ff", "\u0089PNG\r\n\u001a\n", "II*\0", "MM\0*"};
    int refused = 0;
    for (int i = 0; i < 3000; i++) {
      byte[] bytes = new byte[random.nextInt(400)];
      random.nextBytes(bytes);
      byte[] start = starts[i % starts.length].getBytes(StandardCharsets.ISO_8859_1);
      System.arraycopy(start, 0, bytes, 0, Math.min(start.length, bytes.length));
      refused += DecodePhoto.decode(bytes) instanceof UnreadablePhoto ? 1 : 0;
    }
    assertEquals(3000, refused);
  }

  @Test
  void aChangedByteAnywhereNeverThrows() {
    Random random = new Random(7);
    byte[] exif = PhotoBytes.exif(6, ByteOrder.BIG_ENDIAN);
    byte[][] files = {
      PhotoBytes.withExif(JPEG, exif),
      PhotoBytes.pngWithExif(PNG, exif),
      TIFF,
      PhotoBytes.write(NOISE, "tif"),
      PhotoBytes.progressive(NOISE)
    };
    int decoded = 0;
    for (int i = 0; i < 1500; i++) {
      byte[] file = files[i % files.length].clone();
      // The first 700 bytes hold the headers, where a change does most.
      for (int change = 0; change < 1 + i % 3; change++) {
        file[random.nextInt(i % 2 == 0 ? 700 : file.length)] = (byte) random.nextInt(256);
      }
      decoded += DecodePhoto.decode(file) instanceof DecodedPhoto ? 1 : 0;
    }
    assertTrue(decoded > 0 && decoded < 1500, decoded + " decoded");
  }
}
