// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.stream.ImageOutputStream;

/** Writes picture files for tests with the JDK's own writers, and Exif blocks by hand. */
final class PhotoBytes {
  static final String TAKEN_AT = "2026:03:01 18:20:05";
  static final String OFFSET = "+01:00";

  private PhotoBytes() {}

  /** Writes a picture with the JDK's writer of a format: jpg, png or tif. */
  static byte[] write(BufferedImage image, String format) {
    return write(image, format, ImageWriteParam.MODE_DEFAULT);
  }

  /** Writes a progressive JPEG. */
  static byte[] progressive(BufferedImage image) {
    return write(image, "jpg", ImageWriteParam.MODE_EXPLICIT);
  }

  private static byte[] write(BufferedImage image, String format, int quality) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName(format).next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      if (quality == ImageWriteParam.MODE_EXPLICIT) {
        param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
      }
      IIOMetadata metadata =
          writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), param);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, metadata), param);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  /**
   * Composes an Exif block by hand: make, model, orientation, and a sub-directory with
   * DateTimeOriginal and OffsetTimeOriginal. Layout of TIFF 6.0, tags of Exif 2.32: 0x010F Make,
   * 0x0110 Model, 0x0112 Orientation, 0x8769 Exif sub-directory, 0x9003 DateTimeOriginal, 0x9011
   * OffsetTimeOriginal.
   */
  static byte[] exif(int orientation, ByteOrder order) {
    ByteBuffer block = ByteBuffer.allocate(160).order(order);
    block.put((order == ByteOrder.LITTLE_ENDIAN ? "II" : "MM").getBytes(StandardCharsets.US_ASCII));
    block.putShort((short) 42).putInt(8);
    int text = 100;
    block.putShort((short) 4);
    entry(block, 0x010f, 2, 6).putInt(text);
    entry(block, 0x0110, 2, 4).put("R-1\0".getBytes(StandardCharsets.US_ASCII));
    entry(block, 0x0112, 3, 1).putShort((short) orientation).putShort((short) 0);
    entry(block, 0x8769, 4, 1).putInt(62);
    block.putInt(0);
    block.putShort((short) 2);
    entry(block, 0x9003, 2, 20).putInt(text + 6);
    entry(block, 0x9011, 2, 7).putInt(text + 26);
    block.putInt(0);
    block.position(text);
    block.put(("Maker\0" + TAKEN_AT + "\0" + OFFSET + "\0").getBytes(StandardCharsets.US_ASCII));
    return block.array();
  }

  private static ByteBuffer entry(ByteBuffer block, int tag, int type, int count) {
    return block.putShort((short) tag).putShort((short) type).putInt(count);
  }

  /** Puts an Exif block into a JPEG, as the first segment behind its start mark. */
  static byte[] withExif(byte[] jpeg, byte[] exif) {
    byte[] name = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
    ByteBuffer out = ByteBuffer.allocate(jpeg.length + 4 + name.length + exif.length);
    out.put(jpeg, 0, 2).putShort((short) 0xffe1);
    out.putShort((short) (2 + name.length + exif.length)).put(name).put(exif);
    return out.put(jpeg, 2, jpeg.length - 2).array();
  }

  /** Puts an eXIf chunk into a PNG, right behind its header chunk. */
  static byte[] pngWithExif(byte[] png, byte[] exif) {
    return insertChunk(png, "eXIf", exif);
  }

  /** Puts a chunk with a right checksum behind a PNG's header chunk, which ends at byte 33. */
  static byte[] insertChunk(byte[] png, String type, byte[] data) {
    ByteBuffer out = ByteBuffer.allocate(png.length + 12 + data.length);
    out.put(png, 0, 33).putInt(data.length);
    out.put(type.getBytes(StandardCharsets.US_ASCII)).put(data);
    CRC32 crc = new CRC32();
    crc.update(type.getBytes(StandardCharsets.US_ASCII));
    crc.update(data);
    return out.putInt((int) crc.getValue()).put(png, 33, png.length - 33).array();
  }

  /** Writes an RGB picture as an uncompressed TIFF of one strip, by hand, at 8 or 16 bits. */
  static byte[] tiff(BufferedImage image, int orientation, int bits, ByteOrder order) {
    int width = image.getWidth();
    int height = image.getHeight();
    int pixelBytes = width * height * 3 * bits / 8;
    int pixelsAt = 8 + 2 + 10 * 12 + 4 + 6;
    ByteBuffer file = ByteBuffer.allocate(pixelsAt + pixelBytes).order(order);
    file.put((order == ByteOrder.LITTLE_ENDIAN ? "II" : "MM").getBytes(StandardCharsets.US_ASCII));
    file.putShort((short) 42).putInt(8).putShort((short) 10);
    number(file, 256, width);
    number(file, 257, height);
    entry(file, 258, 3, 3).putInt(pixelsAt - 6);
    number(file, 259, 1);
    number(file, 262, 2);
    entry(file, 273, 4, 1).putInt(pixelsAt);
    number(file, 274, orientation);
    number(file, 277, 3);
    number(file, 278, height);
    entry(file, 279, 4, 1).putInt(pixelBytes);
    file.putInt(0);
    for (int i = 0; i < 3; i++) {
      file.putShort((short) bits);
    }
    for (int i = 0; i < width * height; i++) {
      int argb = image.getRGB(i % width, i / width);
      for (int shift = 16; shift >= 0; shift -= 8) {
        int level = argb >> shift & 0xff;
        if (bits == 8) {
          file.put((byte) level);
        } else {
          file.putShort((short) (level * 257));
        }
      }
    }
    return file.array();
  }

  private static void number(ByteBuffer file, int tag, int value) {
    entry(file, tag, 3, 1).putShort((short) value).putShort((short) 0);
  }

  /** Returns the first bytes of a file. */
  static byte[] cut(byte[] file, int length) {
    return Arrays.copyOf(file, length);
  }

  /** Returns where a byte pattern first begins, or fails. */
  static int find(byte[] file, byte[] wanted) {
    for (int at = 0; at <= file.length - wanted.length; at++) {
      if (Arrays.equals(file, at, at + wanted.length, wanted, 0, wanted.length)) {
        return at;
      }
    }
    throw new AssertionError("pattern not found");
  }
}
