// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import org.raftgauge.batch.fixture.SmallPhoto;

/**
 * Makes the bytes of a broken photo from a line such as {@code jpeg 7 | cut 900}: a sound picture,
 * then what is done to it.
 */
final class PhotoRecipe {

  private PhotoRecipe() {}

  static byte[] bytes(String recipe) {
    String[] steps = recipe.split(" \\| ", -1);
    byte[] file = begin(steps[0].split(" ", -1));
    for (String step : Arrays.asList(steps).subList(1, steps.length)) {
      file = change(file, step.split(" ", -1));
    }
    return file;
  }

  private static byte[] begin(String[] words) {
    long number = words.length > 1 && words[1].matches("\\d{1,9}") ? Long.parseLong(words[1]) : 0;
    return switch (words[0]) {
      case "jpeg" -> SmallPhoto.file(lane(number), "jpg");
      case "png", "tif", "bmp", "gif" -> SmallPhoto.file(lane(number), words[0]);
      case "grey" ->
          SmallPhoto.file(SmallPhoto.lane(number, BufferedImage.TYPE_BYTE_GRAY), words[2]);
      case "alpha" -> SmallPhoto.file(SmallPhoto.lane(number, BufferedImage.TYPE_INT_ARGB), "png");
      case "palette" ->
          SmallPhoto.file(SmallPhoto.lane(number, BufferedImage.TYPE_BYTE_INDEXED), "png");
      case "blank" -> blank(words);
      case "text" ->
          String.join(" ", Arrays.asList(words).subList(1, words.length))
              .getBytes(StandardCharsets.UTF_8);
      case "hex" -> HexFormat.of().parseHex(words[1]);
      case "zeros" -> new byte[(int) number];
      case "random" -> random(number, Integer.parseInt(words[2]));
      default -> throw new IllegalStateException("no such picture: " + words[0]);
    };
  }

  private static BufferedImage lane(long seed) {
    return SmallPhoto.lane(seed, BufferedImage.TYPE_INT_RGB);
  }

  /** A picture of one colour: {@code blank WIDTH HEIGHT RRGGBB FORMAT}. */
  private static byte[] blank(String[] words) {
    BufferedImage image =
        new BufferedImage(
            Integer.parseInt(words[1]), Integer.parseInt(words[2]), BufferedImage.TYPE_INT_RGB);
    int colour = Integer.parseInt(words[3], 16);
    for (int i = 0; i < image.getWidth() * image.getHeight(); i++) {
      image.setRGB(i % image.getWidth(), Math.floorDiv(i, image.getWidth()), colour);
    }
    return SmallPhoto.file(image, words[4]);
  }

  private static byte[] random(long seed, int length) {
    byte[] bytes = new byte[length];
    new Random(seed).nextBytes(bytes);
    return bytes;
  }

  static byte[] change(byte[] file, String[] words) {
    byte[] copy = file.clone();
    switch (words[0]) {
      case "cut" -> {
        return Arrays.copyOf(file, Integer.parseInt(words[1]));
      }
      case "flip" -> copy[at(file, words[1])] ^= (byte) (1 << Integer.parseInt(words[2]));
      case "set" -> {
        byte[] fresh = HexFormat.of().parseHex(words[2]);
        System.arraycopy(fresh, 0, copy, at(file, words[1]), fresh.length);
      }
      case "zero" ->
          Arrays.fill(
              copy, at(file, words[1]), at(file, words[1]) + Integer.parseInt(words[2]), (byte) 0);
      case "append" -> {
        return joined(file, begin(Arrays.copyOfRange(words, 1, words.length)));
      }
      case "jpeg-size" ->
          ByteBuffer.wrap(copy)
              .putShort(find(copy, "ffc0") + 5, (short) Integer.parseInt(words[2]))
              .putShort(find(copy, "ffc0") + 7, (short) Integer.parseInt(words[1]));
      case "png-size" -> {
        ByteBuffer header = ByteBuffer.wrap(copy);
        header.putInt(16, Integer.parseUnsignedInt(words[1]));
        header.putInt(20, Integer.parseUnsignedInt(words[2]));
        header.putInt(29, crc(copy, 12, 17));
      }
      case "png-chunk" -> {
        return chunk(file, words[1], begin(Arrays.copyOfRange(words, 2, words.length)));
      }
      case "png-bomb" -> {
        return chunk(file, "zTXt", bomb("Comment\0\0", Integer.parseInt(words[1])));
      }
      case "png-pixels" -> {
        return chunk(file, "IDAT", bomb("", Integer.parseInt(words[1])));
      }
      case "exif" -> {
        return exif(file, String.join(" ", Arrays.asList(words).subList(1, words.length)));
      }
      default -> throw new IllegalStateException("no such change: " + words[0]);
    }
    return copy;
  }

  /** A place: a number of bytes, from the end where negative, or behind a hexadecimal pattern. */
  private static int at(byte[] file, String place) {
    if (place.startsWith("behind-")) {
      String[] parts = place.substring(7).split("\\+", -1);
      return find(file, parts[0]) + Integer.parseInt(parts[1]);
    }
    int at = Integer.parseInt(place);
    return at < 0 ? file.length + at : at;
  }

  private static int find(byte[] file, String hex) {
    byte[] wanted = HexFormat.of().parseHex(hex);
    for (int at = 0; at <= file.length - wanted.length; at++) {
      if (Arrays.equals(file, at, at + wanted.length, wanted, 0, wanted.length)) {
        return at;
      }
    }
    throw new IllegalStateException(hex + " is not in the file");
  }

  private static byte[] joined(byte[]... parts) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      all.writeBytes(part);
    }
    return all.toByteArray();
  }

  /** Puts a chunk with a right checksum behind the PNG header, which ends at byte 33. */
  private static byte[] chunk(byte[] png, String type, byte[] data) {
    byte[] chunk = joined(type.getBytes(StandardCharsets.US_ASCII), data);
    byte[] length = ByteBuffer.allocate(4).putInt(data.length).array();
    byte[] sum = ByteBuffer.allocate(4).putInt(crc(chunk, 0, chunk.length)).array();
    return joined(
        Arrays.copyOf(png, 33), length, chunk, sum, Arrays.copyOfRange(png, 33, png.length));
  }

  private static int crc(byte[] bytes, int from, int length) {
    CRC32 crc = new CRC32();
    crc.update(bytes, from, length);
    return (int) crc.getValue();
  }

  /** The data of a chunk that unfolds to so many megabytes. */
  private static byte[] bomb(String before, int megabytes) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    packed.writeBytes(before.getBytes(StandardCharsets.US_ASCII));
    try (DeflaterOutputStream out = new DeflaterOutputStream(packed)) {
      for (int i = 0; i < megabytes; i++) {
        out.write(new byte[1 << 20]);
      }
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return packed.toByteArray();
  }

  /**
   * Puts an Exif block with one date, 0x9003 DateTimeOriginal of Exif 2.32, into a JPEG behind its
   * start mark.
   */
  private static byte[] exif(byte[] jpeg, String date) {
    byte[] text = (date + "\0").getBytes(StandardCharsets.ISO_8859_1);
    ByteBuffer block = ByteBuffer.allocate(44 + text.length);
    block.put("MM\0*".getBytes(StandardCharsets.ISO_8859_1)).putInt(8);
    block.putShort((short) 1).putShort((short) 0x8769).putShort((short) 4).putInt(1).putInt(26);
    block.putInt(0);
    block.putShort((short) 1).putShort((short) 0x9003).putShort((short) 2).putInt(text.length);
    block.putInt(44).putInt(0).put(text);
    byte[] name = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
    byte[] head = {(byte) 0xff, (byte) 0xe1, 0, (byte) (2 + name.length + block.capacity())};
    return joined(
        Arrays.copyOf(jpeg, 2),
        head,
        name,
        block.array(),
        Arrays.copyOfRange(jpeg, 2, jpeg.length));
  }
}
