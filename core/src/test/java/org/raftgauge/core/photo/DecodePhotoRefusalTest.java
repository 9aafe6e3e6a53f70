// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.awt.image.BufferedImage;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;

class DecodePhotoRefusalTest {
  private static final String COPY_AGAIN =
      "copy it from the camera again; if it is the same there, take the photo again";
  private static final String SAVE_AS_JPEG =
      "save it as an ordinary RGB JPEG, or set the camera to JPEG";
  private static final BufferedImage NOISE = TestPictures.noise(160, 120, 1);
  private static final byte[] JPEG = PhotoBytes.write(NOISE, "jpg");
  private static final byte[] PNG = PhotoBytes.write(NOISE, "png");
  private static final byte[] TIFF = PhotoBytes.tiff(NOISE, 1, 8, ByteOrder.LITTLE_ENDIAN);

  @Test
  void anEmptyFileIsRefused() {
    assertRefused(new byte[0], "the file is empty (0 bytes)", COPY_AGAIN);
  }

  @Test
  void aFileOfZeroBytesIsRefused() {
    assertRefused(new byte[5000], "the file holds nothing but zero bytes", COPY_AGAIN);
  }

  @Test
  void textIsNotAPicture() {
    assertRefused(
        "raft,site\n1,A1\n".getBytes(StandardCharsets.UTF_8),
        "the file is not a JPEG, PNG or TIFF picture",
        SAVE_AS_JPEG);
  }

  @Test
  void aHeicPictureIsNamedAsSuch() {
    assertRefused(
        "\0\0\0\u0018ftypheic\0\0\0\0".getBytes(StandardCharsets.ISO_8859_1),
        "the file is a HEIC picture or a film, which is not read",
        SAVE_AS_JPEG);
  }

  @Test
  void aWebpPictureIsNamedAsSuch() {
    assertRefused(
        "RIFF\u0010\0\0\0WEBPVP8 ".getBytes(StandardCharsets.ISO_8859_1),
        "the file is a WebP picture, which is not read",
        SAVE_AS_JPEG);
  }

  @Test
  void aPictureWithMorePackedDataThanItsSizeCanNeedIsRefused() {
    // Four channels of 16 bits are 160 * 120 * 8 = 153,600 bytes; noise does not pack.
    byte[] bomb = new byte[300_000];
    assertRefused(
        PhotoBytes.insertChunk(PNG, "IDAT", bomb),
        "the PNG holds 0.4 MB of packed pixels, more than a picture of 160 x 120 px can need",
        COPY_AGAIN);
    // The tenth entry of the directory says the bytes of the one strip.
    ByteBuffer tiff = ByteBuffer.wrap(Arrays.copyOf(TIFF, 400_000)).order(ByteOrder.LITTLE_ENDIAN);
    tiff.putInt(8 + 2 + 9 * 12 + 8, 350_000);
    assertRefused(
        tiff.array(),
        "the TIFF holds 0.4 MB of packed pixels, more than a picture of 160 x 120 px can need",
        COPY_AGAIN);
  }

  @Test
  void aJpegCutShortIsRefused() {
    assertRefused(
        PhotoBytes.cut(JPEG, 3000),
        "the JPEG breaks off: 3000 bytes without an end mark",
        COPY_AGAIN);
  }

  @Test
  void aJpegCutAnywhereIsRefused() {
    for (int length = 1; length < JPEG.length - 1; length += 37) {
      String text = "cut to " + length + " of " + JPEG.length + " bytes";
      assertInstanceOf(
          UnreadablePhoto.class, DecodePhoto.decode(PhotoBytes.cut(JPEG, length)), text);
    }
  }

  @Test
  void aProgressiveJpegCutAnywhereIsRefused() {
    byte[] file = PhotoBytes.progressive(NOISE);
    for (int length = 1; length < file.length - 1; length += 61) {
      assertInstanceOf(
          UnreadablePhoto.class, DecodePhoto.decode(PhotoBytes.cut(file, length)), "" + length);
    }
  }

  @Test
  void aJpegWithALostPieceAndAnEndMarkIsRefused() {
    byte[] file = Arrays.copyOf(JPEG, 5000);
    file[4998] = (byte) 0xff;
    file[4999] = (byte) 0xd9;
    assertRefused(file, "the JPEG is damaged and cannot be decoded", COPY_AGAIN);
  }

  @Test
  void aJpegWithABlockOfZerosIsRefused() {
    byte[] file = JPEG.clone();
    Arrays.fill(file, 4000, 5024, (byte) 0);
    assertRefused(file, "the JPEG is damaged and cannot be decoded", COPY_AGAIN);
  }

  /**
   * A flipped bit in the coded mean of a block shifts all that follow, T.81 F.1.2.1: here the
   * levels are shifted by hand, from the 20th unit of 16 px of the 15th row on.
   */
  @Test
  void aJpegWhoseLevelsAFlippedBitShiftedIsRefused() {
    for (int shift : new int[] {-25, 12, 25}) {
      BufferedImage picture = TestPictures.board(640, 480, 3);
      for (int i = 0; i < 640 * 480; i++) {
        int row = i / 640 / 16;
        if (row > 14 || (row == 14 && i % 640 / 16 >= 19)) {
          shift(picture, i % 640, i / 640, shift);
        }
      }
      assertRefused(
          PhotoBytes.write(picture, "jpg"),
          "the JPEG is damaged and cannot be decoded",
          COPY_AGAIN);
    }
  }

  @Test
  void aStraightEdgeAcrossThePictureIsNoDamage() {
    for (int y = 224; y <= 240; y++) {
      BufferedImage picture = TestPictures.board(640, 480, 3);
      for (int i = 640 * y; i < 640 * 480; i++) {
        shift(picture, i % 640, i / 640, -25);
      }
      assertInstanceOf(
          DecodedPhoto.class, DecodePhoto.decode(PhotoBytes.write(picture, "jpg")), "y " + y);
    }
  }

  private static void shift(BufferedImage picture, int x, int y, int levels) {
    int rgb = picture.getRGB(x, y);
    int shifted = 0;
    for (int at = 16; at >= 0; at -= 8) {
      int level = Math.max(0, Math.min(255, (rgb >> at & 0xff) + levels));
      shifted |= level << at;
    }
    picture.setRGB(x, y, shifted);
  }

  @Test
  void aJpegWithoutAPictureIsRefused() {
    byte[] file = {(byte) 0xff, (byte) 0xd8, (byte) 0xff, (byte) 0xd9};
    assertRefused(file, "the JPEG holds no picture", COPY_AGAIN);
  }

  @Test
  void aJpegInPrintColoursIsRefused() {
    byte[] file = JPEG.clone();
    // T.81 B.2.2: marker, length (2), bits (1), height (2), width (2), channels (1).
    file[frameAt(file) + 9] = 4;
    assertRefused(file, "the JPEG is in print colours (CMYK)", SAVE_AS_JPEG);
  }

  @Test
  void aJpegOfTwelveBitsIsRefused() {
    byte[] file = JPEG.clone();
    file[frameAt(file) + 4] = 12;
    assertRefused(file, "the JPEG has 12 bits a channel, not 8", SAVE_AS_JPEG);
  }

  @Test
  void aLosslessJpegIsRefused() {
    byte[] file = JPEG.clone();
    file[frameAt(file) + 1] = (byte) 0xc3;
    assertRefused(file, "the JPEG is coded in a way that is not read", SAVE_AS_JPEG);
  }

  @Test
  void aPictureTooLargeIsRefusedBeforeItIsDecoded() {
    byte[] jpeg = JPEG.clone();
    ByteBuffer.wrap(jpeg)
        .putShort(frameAt(jpeg) + 5, (short) 14000)
        .putShort(frameAt(jpeg) + 7, (short) 15000);
    assertRefused(
        jpeg,
        "the picture is too large: 15000 x 14000 px, 210 megapixels",
        "set the camera to 24 megapixels or less; the limit is 120");
  }

  @Test
  void aPngClaimingFourBillionPixelsASideIsRefused() {
    byte[] png = PNG.clone();
    ByteBuffer.wrap(png).putInt(16, -1).putInt(20, -1);
    mendHeaderChecksum(png);
    assertRefused(
        png,
        "the picture is too large: 4294967295 x 4294967295 px, 18446744065120 megapixels",
        "set the camera to 24 megapixels or less; the limit is 120");
  }

  @Test
  void aPictureOfOnePixelIsRefused() {
    BufferedImage one = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
    for (String format : new String[] {"jpg", "png", "tif"}) {
      assertRefused(
          PhotoBytes.write(one, format),
          "the picture is too small to measure: 1 x 1 px",
          "use the photo as the camera took it, not a thumbnail");
    }
  }

  @Test
  void aPngCutAnywhereIsRefused() {
    for (int length = 8; length < PNG.length; length += 97) {
      assertRefused(
          PhotoBytes.cut(PNG, length),
          "the PNG breaks off: " + length + " bytes without an end mark",
          COPY_AGAIN);
    }
  }

  @Test
  void aPngWithAFlippedBitIsRefused() {
    int data = PhotoBytes.find(PNG, "IDAT".getBytes(StandardCharsets.US_ASCII));
    byte[] file = PNG.clone();
    file[data + 100] ^= 4;
    assertRefused(file, "the PNG is damaged: checksum wrong at byte " + (data - 4), COPY_AGAIN);
  }

  @Test
  void aPngWhoseDataAreDamagedUnderARightChecksumIsRefused() {
    byte[] garbage = new byte[500];
    new Random(3).nextBytes(garbage);
    // A data chunk of garbage in front of the real one: its checksum holds, its content does not.
    assertRefused(
        PhotoBytes.insertChunk(PNG, "IDAT", garbage),
        "the PNG is damaged and cannot be decoded",
        COPY_AGAIN);
  }

  @Test
  void aTiffCutAnywhereIsRefused() {
    for (int length = 4; length < TIFF.length; length += 977) {
      assertRefused(
          PhotoBytes.cut(TIFF, length),
          "the TIFF breaks off: it points behind its end at " + length + " bytes",
          COPY_AGAIN);
    }
  }

  @Test
  void aTiffInPrintColoursIsRefused() {
    byte[] file = TIFF.clone();
    // Directory at 8: count (2), then entries of 12 bytes; photometric (262) is the fifth.
    file[8 + 2 + 4 * 12 + 8] = 5;
    assertRefused(file, "the TIFF is in print colours (CMYK)", SAVE_AS_JPEG);
  }

  @Test
  void aRawTiffIsRefused() {
    byte[] file = TIFF.clone();
    // 32803: colour filter array, as in raw camera files.
    ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).putShort(66, (short) 32803);
    assertRefused(file, "the TIFF is not an ordinary 8-bit or 16-bit RGB picture", SAVE_AS_JPEG);
  }

  private static void assertRefused(byte[] file, String reason, String remedy) {
    UnreadablePhoto refusal =
        assertInstanceOf(UnreadablePhoto.class, DecodePhoto.decode(file), reason);
    assertEquals(reason, refusal.reason());
    assertEquals(remedy, refusal.remedy());
  }

  private static int frameAt(byte[] jpeg) {
    return PhotoBytes.find(jpeg, new byte[] {(byte) 0xff, (byte) 0xc0});
  }

  private static void mendHeaderChecksum(byte[] png) {
    CRC32 crc = new CRC32();
    crc.update(png, 12, 17);
    ByteBuffer.wrap(png).putInt(29, (int) crc.getValue());
  }
}
