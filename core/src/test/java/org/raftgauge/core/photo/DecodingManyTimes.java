// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;

/** Decodes a PNG and a TIFF a hundred times each and prints by how many MB its process grew. */
final class DecodingManyTimes {
  static final Path STATUS = Path.of("/proc/self/status");

  private DecodingManyTimes() {}

  public static void main(String[] args) throws IOException {
    // 1500 x 1000 px: 4.5 MB of native pixels each time.
    BufferedImage board = TestPictures.board(1500, 1000, 3);
    byte[] png = PhotoBytes.write(board, "png");
    byte[] tiff = PhotoBytes.tiff(board, 6, 8, ByteOrder.LITTLE_ENDIAN);
    decode(png, tiff, 10);
    long before = residentKb();
    decode(png, tiff, 100);
    System.out.println((residentKb() - before) / 1024);
  }

  private static void decode(byte[] png, byte[] tiff, int times) {
    for (int i = 0; i < times; i++) {
      if (!(DecodePhoto.decode(png) instanceof DecodedPhoto)
          || !(DecodePhoto.decode(tiff) instanceof DecodedPhoto)) {
        throw new IllegalStateException("a sound picture was refused");
      }
    }
  }

  private static long residentKb() throws IOException {
    return Files.readAllLines(STATUS).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
        .findFirst()
        .orElseThrow();
  }
}
