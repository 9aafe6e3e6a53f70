// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteOrder;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.pixels.RgbImage;

/** Averaged photos against the plain mean of the whole photo's pixels. */
class AveragedPhotoTest {
  private static final int WIDTH = 101;
  private static final int HEIGHT = 74;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void averagesAndCutsAreOfThePixelsOfTheWholePhoto(int orientation) {
    byte[] jpeg =
        PhotoBytes.withExif(
            PhotoBytes.write(TestPictures.board(WIDTH, HEIGHT, 5), "jpg"),
            PhotoBytes.exif(orientation, ByteOrder.BIG_ENDIAN));
    for (int parts : new int[] {2, 3}) {
      assertMeans(jpeg, parts, orientation);
    }
  }

  @Test
  void aPngIsAveragedInItsOwnColours() {
    assertMeans(PhotoBytes.write(TestPictures.noise(WIDTH, HEIGHT, 6), "png"), 2, 1);
  }

  @Test
  void onePartLeavesThePhotoAsItIs() {
    byte[] jpeg = PhotoBytes.write(TestPictures.board(WIDTH, HEIGHT, 7), "jpg");

    DecodedPhoto photo = decoded(jpeg, 1);

    assertTrue(photo.fine().isEmpty());
    assertArrayEquals(whole(jpeg).rgb(), photo.image().rgb());
  }

  @Test
  void pixelsThatWereLetGoCannotBeRead() {
    FinePhoto fine =
        decoded(PhotoBytes.write(TestPictures.board(WIDTH, HEIGHT, 8), "jpg"), 2)
            .fine()
            .orElseThrow();
    assertEquals(6, fine.cut(0, 0, 3, 2).width());
    fine.letGo();
    assertThrows(NoSuchElementException.class, () -> fine.cut(0, 0, 3, 2));
  }

  private static void assertMeans(byte[] file, int parts, int orientation) {
    RgbImage whole = whole(file);
    DecodedPhoto photo = decoded(file, parts);
    RgbImage image = photo.image();
    assertEquals(whole.width() / parts, image.width());
    assertEquals(whole.height() / parts, image.height());
    // What is left over is cut from the stored picture's right and bottom: turned, it may be the
    // left or the top.
    boolean turned = orientation >= 5;
    boolean right = orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
    boolean bottom = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
    int left = (turned ? bottom : right) ? whole.width() % parts : 0;
    int top = (turned ? right : bottom) ? whole.height() % parts : 0;
    int inside = 0;
    for (int y = 0; y < image.height(); y++) {
      for (int x = 0; x < image.width(); x++) {
        for (int c = 0; c < 3; c++) {
          double mean = mean(whole, left + x * parts, top + y * parts, new int[] {parts, c});
          if (Double.isNaN(mean)) {
            continue;
          }
          double difference = image.value(x, y, c) - mean;
          // Half a level of rounding in Y, as much in Cb or Cr times up to 1.772, half a level of
          // rounding back, and half a level in each pixel of the whole photo.
          double most = 0.5 + 0.5 * 1.772 + 0.5 + 0.5;
          assertTrue(Math.abs(difference) <= most, () -> "off by " + difference);
          inside++;
        }
      }
    }
    assertTrue(inside > image.rgb().length / 10, inside + " levels");
    assertCut(whole, photo, new int[] {left, top});
  }

  private static void assertCut(RgbImage whole, DecodedPhoto photo, int[] from) {
    FinePhoto fine = photo.fine().orElseThrow();
    int parts = fine.parts();
    RgbImage cut = fine.cut(3, 2, 5, 4);
    assertEquals(5 * parts, cut.width());
    assertEquals(4 * parts, cut.height());
    for (int y = 0; y < cut.height(); y++) {
      for (int x = 0; x < cut.width(); x++) {
        for (int c = 0; c < 3; c++) {
          assertEquals(
              whole.value(from[0] + 3 * parts + x, from[1] + 2 * parts + y, c), cut.value(x, y, c));
        }
      }
    }
  }

  /** Mean of a square's channel; NaN where a pixel of it is clipped, and so was not averaged. */
  private static double mean(RgbImage whole, int left, int top, int[] partsAndChannel) {
    int parts = partsAndChannel[0];
    double sum = 0;
    for (int i = 0; i < parts * parts; i++) {
      int x = left + i % parts;
      int y = top + Math.floorDiv(i, parts);
      for (int c = 0; c < 3; c++) {
        boolean clipped = whole.value(x, y, c) == 0 || whole.value(x, y, c) == 255;
        sum += clipped ? Double.NaN : 0;
      }
      sum += whole.value(x, y, partsAndChannel[1]);
    }
    return sum / (parts * parts);
  }

  private static RgbImage whole(byte[] file) {
    return assertInstanceOf(DecodedPhoto.class, DecodePhoto.decode(file)).image();
  }

  private static DecodedPhoto decoded(byte[] file, int parts) {
    return assertInstanceOf(DecodedPhoto.class, DecodePhoto.decode(file, (width, height) -> parts));
  }
}
