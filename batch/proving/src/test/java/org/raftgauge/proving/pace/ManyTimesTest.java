// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodedPhoto;

class ManyTimesTest {
  @TempDir Path folder;

  @Test
  void everyCopyIsAFileOfItsOwnThatShowsTheSameAndStandsInTheManifest() throws IOException {
    Path set = folder.resolve("set");
    Files.createDirectories(set.resolve("book"));
    Files.writeString(set.resolve("book/book.yaml"), "units: metric\n");
    Files.createDirectories(set.resolve("photos/plain"));
    BufferedImage picture = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
    picture.setRGB(20, 15, 0xffffff);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(picture, "jpg", bytes);
    Files.write(set.resolve("photos/plain/a.jpg"), bytes.toByteArray());
    Files.writeString(
        set.resolve("photos/manifest.csv"), "photo,taken_at\r\nplain/a.jpg,2026-04-01\r\n");

    Path many = ManyTimes.of(set, folder.resolve("many"), 2);

    assertTrue(Files.exists(many.resolve("book/book.yaml")));
    assertEquals(
        List.of(
            "photo,taken_at", "copy-000/plain/a.jpg,2026-04-01", "copy-001/plain/a.jpg,2026-04-01"),
        Files.readAllLines(many.resolve("photos/manifest.csv")));
    byte[] first = Files.readAllBytes(many.resolve("photos/copy-000/plain/a.jpg"));
    byte[] second = Files.readAllBytes(many.resolve("photos/copy-001/plain/a.jpg"));
    assertFalse(Arrays.equals(first, second));
    assertArrayEquals(levels(bytes.toByteArray()), levels(first));
    assertArrayEquals(levels(bytes.toByteArray()), levels(second));
  }

  @Test
  void aSecondWorkerIsWordedAsATimes() {
    // 0.9 a second by two workers against 0.6 by one is 1.5 times as many.
    assertEquals(
        "Over a long run of 96 photos, these many times over and the first 24 not counted: 0.60"
            + " photos a second by one worker, 0.90 by two, 1.50 times as many (aimed at: 1.9); at"
            + " most 812 MB resident by two (aimed at: 700).\n",
        new LongRun(96, 24, 0.6, 0.9, 812.4).words().replace("\r\n", "\n"));
  }

  private static byte[] levels(byte[] jpeg) {
    return ((DecodedPhoto) DecodePhoto.decode(jpeg)).image().rgb();
  }
}
