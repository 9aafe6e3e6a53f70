// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.ByteOrder;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.RgbImage;

class DecodePhotoTest {
  private static final BufferedImage NOISE = TestPictures.noise(160, 120, 1);

  @Test
  void aPngKeepsEveryLevel() {
    assertArrayEquals(
        TestPictures.toRgb(NOISE).rgb(), decode(PhotoBytes.write(NOISE, "png")).image().rgb());
  }

  @Test
  void aTiffKeepsEveryLevelWithOneStripOrMany() {
    byte[] expected = TestPictures.toRgb(NOISE).rgb();
    assertArrayEquals(expected, decode(PhotoBytes.write(NOISE, "tif")).image().rgb());
    assertArrayEquals(
        expected, decode(PhotoBytes.tiff(NOISE, 1, 8, ByteOrder.BIG_ENDIAN)).image().rgb());
  }

  @Test
  void sixteenBitsAreScaledToEight() {
    // The 16-bit levels are 257 times the 8-bit ones, so that scaling gives those back.
    byte[] expected = TestPictures.toRgb(NOISE).rgb();
    assertArrayEquals(
        expected, decode(PhotoBytes.tiff(NOISE, 1, 16, ByteOrder.LITTLE_ENDIAN)).image().rgb());
  }

  @Test
  void sixteenBitGreyIsRoundedNotCutOff() {
    BufferedImage grey = new BufferedImage(16, 16, BufferedImage.TYPE_USHORT_GRAY);
    // 25599 / 257 = 99.6, which rounds to 100; cutting off its low byte would give 99.
    for (int i = 0; i < 256; i++) {
      grey.getRaster().setSample(i % 16, i / 16, 0, 25599);
    }
    RgbImage image = decode(PhotoBytes.write(grey, "png")).image();
    assertEquals(100, image.value(3, 3, 0));
    assertEquals(100, image.value(3, 3, 1));
    assertEquals(100, image.value(3, 3, 2));
  }

  @Test
  void greyIsExpandedInEveryFormat() {
    BufferedImage grey = new BufferedImage(32, 24, BufferedImage.TYPE_BYTE_GRAY);
    for (int i = 0; i < 32 * 24; i++) {
      grey.getRaster().setSample(i % 32, i / 32, 0, 77);
    }
    for (String format : new String[] {"jpg", "png", "tif"}) {
      RgbImage image = decode(PhotoBytes.write(grey, format)).image();
      for (int channel = 0; channel < 3; channel++) {
        assertEquals(77, image.value(9, 9, channel), format);
      }
    }
  }

  @Test
  void transparencyIsIgnored() {
    BufferedImage image = new BufferedImage(32, 24, BufferedImage.TYPE_INT_ARGB);
    for (int i = 0; i < 32 * 24; i++) {
      image.setRGB(i % 32, i / 32, 0x40c86432);
    }
    RgbImage decoded = decode(PhotoBytes.write(image, "png")).image();
    assertEquals(0xc8, decoded.value(5, 5, 0));
    assertEquals(0x64, decoded.value(5, 5, 1));
    assertEquals(0x32, decoded.value(5, 5, 2));
  }

  @Test
  void aProgressiveJpegGivesTheSamePictureAsAPlainOne() {
    BufferedImage board = TestPictures.board(160, 120, 5);
    assertArrayEquals(
        decode(PhotoBytes.write(board, "jpg")).image().rgb(),
        decode(PhotoBytes.progressive(board)).image().rgb());
  }

  @Test
  void bytesBehindTheEndMarkAreAllowed() {
    byte[] jpeg = PhotoBytes.write(NOISE, "jpg");
    ByteArrayOutputStream twice = new ByteArrayOutputStream();
    twice.writeBytes(jpeg);
    twice.writeBytes(new byte[100]);
    twice.writeBytes(jpeg);
    assertArrayEquals(decode(jpeg).image().rgb(), decode(twice.toByteArray()).image().rgb());
  }

  @Test
  void aFewPaddingBytesBeforeTheEndMarkAreAllowed() {
    byte[] jpeg = PhotoBytes.write(NOISE, "jpg");
    ByteArrayOutputStream padded = new ByteArrayOutputStream();
    padded.write(jpeg, 0, jpeg.length - 2);
    padded.writeBytes(new byte[8]);
    padded.write(jpeg, jpeg.length - 2, 2);
    assertArrayEquals(decode(jpeg).image().rgb(), decode(padded.toByteArray()).image().rgb());
  }

  @Test
  void aThumbnailsEndMarkIsNotTakenForThePhotos() {
    byte[] thumbnail = PhotoBytes.write(TestPictures.noise(32, 24, 2), "jpg");
    byte[] exif = PhotoBytes.exif(1, ByteOrder.BIG_ENDIAN);
    ByteArrayOutputStream block = new ByteArrayOutputStream();
    block.writeBytes(exif);
    block.writeBytes(thumbnail);
    byte[] file = PhotoBytes.withExif(PhotoBytes.write(NOISE, "jpg"), block.toByteArray());
    assertEquals(160, decode(file).image().width());
    // Cut behind the thumbnail: its end mark is there, the photo's is not.
    assertInstanceOf(
        UnreadablePhoto.class, DecodePhoto.decode(PhotoBytes.cut(file, file.length - 500)));
  }

  @Test
  void tagsAreReadFromEveryFormat() {
    PhotoTags expected =
        new PhotoTags(
            3,
            Optional.of(PhotoBytes.TAKEN_AT),
            Optional.of(PhotoBytes.OFFSET),
            Optional.of("Maker"),
            Optional.of("R-1"));
    for (ByteOrder order : new ByteOrder[] {ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN}) {
      byte[] exif = PhotoBytes.exif(3, order);
      assertEquals(
          expected, decode(PhotoBytes.withExif(PhotoBytes.write(NOISE, "jpg"), exif)).tags());
      assertEquals(
          expected, decode(PhotoBytes.pngWithExif(PhotoBytes.write(NOISE, "png"), exif)).tags());
    }
  }

  @Test
  void aBrokenExifBlockLeavesThePhotoUsable() {
    byte[] exif = PhotoBytes.exif(6, ByteOrder.BIG_ENDIAN);
    exif[0] = 'X';
    DecodedPhoto photo = decode(PhotoBytes.withExif(PhotoBytes.write(NOISE, "jpg"), exif));
    assertEquals(PhotoTags.NONE, photo.tags());
  }

  @Test
  void aFormatIsToldByContentNotByGuess() {
    BufferedImage green = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = green.createGraphics();
    graphics.setColor(Color.GREEN);
    graphics.fillRect(0, 0, 40, 30);
    graphics.dispose();
    for (String format : new String[] {"jpg", "png", "tif"}) {
      RgbImage image = decode(PhotoBytes.write(green, format)).image();
      assertTrue(image.value(20, 15, 1) > 250 && image.value(20, 15, 0) < 5, format);
    }
  }

  private static DecodedPhoto decode(byte[] file) {
    return assertInstanceOf(DecodedPhoto.class, DecodePhoto.decode(file));
  }
}
