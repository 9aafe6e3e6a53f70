// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.ByteOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.pixels.RgbImage;

class DecodePhotoOrientationTest {
  // The upright picture: 64 wide, 48 high, a colour in each corner.
  private static final int WIDTH = 64;
  private static final int HEIGHT = 48;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void aJpegComesOutUpright(int orientation) {
    byte[] jpeg = PhotoBytes.write(stored(orientation), "jpg");
    assertUpright(
        PhotoBytes.withExif(jpeg, PhotoBytes.exif(orientation, ByteOrder.BIG_ENDIAN)), orientation);
    assertUpright(
        PhotoBytes.withExif(jpeg, PhotoBytes.exif(orientation, ByteOrder.LITTLE_ENDIAN)),
        orientation);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void aPngComesOutUpright(int orientation) {
    byte[] png = PhotoBytes.write(stored(orientation), "png");
    assertUpright(
        PhotoBytes.pngWithExif(png, PhotoBytes.exif(orientation, ByteOrder.BIG_ENDIAN)),
        orientation);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void aTiffComesOutUprightAtBothDepthsAndByteOrders(int orientation) {
    BufferedImage stored = stored(orientation);
    for (int bits : new int[] {8, 16}) {
      for (ByteOrder order : new ByteOrder[] {ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN}) {
        assertUpright(PhotoBytes.tiff(stored, orientation, bits, order), orientation);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 9, 255})
  void anOrientationThatDoesNotExistLeavesThePictureAsStored(int orientation) {
    byte[] jpeg = PhotoBytes.write(stored(1), "jpg");
    assertUpright(PhotoBytes.withExif(jpeg, PhotoBytes.exif(orientation, ByteOrder.BIG_ENDIAN)), 1);
  }

  private static void assertUpright(byte[] file, int orientation) {
    DecodedPhoto photo = assertInstanceOf(DecodedPhoto.class, DecodePhoto.decode(file));
    RgbImage image = photo.image();
    assertEquals(orientation, photo.tags().orientation());
    assertEquals(WIDTH, image.width());
    assertEquals(HEIGHT, image.height());
    assertEquals(
        "red green blue white",
        String.join(
            " ",
            colour(image, 4, 4),
            colour(image, WIDTH - 5, 4),
            colour(image, 4, HEIGHT - 5),
            colour(image, WIDTH - 5, HEIGHT - 5)));
  }

  private static String colour(RgbImage image, int x, int y) {
    boolean red = image.value(x, y, 0) > 200;
    boolean green = image.value(x, y, 1) > 200;
    boolean blue = image.value(x, y, 2) > 200;
    if (red && green && blue) {
      return "white";
    }
    return red ? "red" : green ? "green" : blue ? "blue" : "black";
  }

  /**
   * Draws what a camera stores. Exif 2.32, tag 0x0112: the first stored row is the upright
   * picture's 1 top, 2 top, 3 bottom, 4 bottom, 5 left, 6 right, 7 right, 8 left side; the first
   * stored column its 1 left, 2 right, 3 right, 4 left, 5 top, 6 top, 7 bottom, 8 bottom side. So
   * the stored top-left corner is the upright corner where those two sides meet, and so on.
   */
  private static BufferedImage stored(int orientation) {
    String[] firstRow = {"", "top", "top", "bottom", "bottom", "left", "right", "right", "left"};
    String[] firstColumn = {"", "left", "right", "right", "left", "top", "top", "bottom", "bottom"};
    String row = firstRow[orientation];
    String column = firstColumn[orientation];
    boolean swapped = orientation >= 5;
    int width = swapped ? HEIGHT : WIDTH;
    int height = swapped ? WIDTH : HEIGHT;
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    corner(graphics, 0, 0, uprightCorner(row, column));
    corner(graphics, width - 16, 0, uprightCorner(row, opposite(column)));
    corner(graphics, 0, height - 16, uprightCorner(opposite(row), column));
    corner(graphics, width - 16, height - 16, uprightCorner(opposite(row), opposite(column)));
    graphics.dispose();
    return image;
  }

  private static void corner(Graphics2D graphics, int x, int y, Color colour) {
    graphics.setColor(colour);
    graphics.fillRect(x, y, 16, 16);
  }

  private static String opposite(String side) {
    return switch (side) {
      case "top" -> "bottom";
      case "bottom" -> "top";
      case "left" -> "right";
      case "right" -> "left";
      default -> throw new AssertionError(side);
    };
  }

  private static Color uprightCorner(String side, String otherSide) {
    boolean top = side.equals("top") || otherSide.equals("top");
    boolean left = side.equals("left") || otherSide.equals("left");
    if (top) {
      return left ? Color.RED : Color.GREEN;
    }
    return left ? Color.BLUE : Color.WHITE;
  }
}
