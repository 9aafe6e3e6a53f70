// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

class FindTagsTest {

  @Test
  void severalTagsAreReadAtAnyRotation() {
    // ISO/IEC 18004: version 1 has 21 modules a side; 5 px each.
    for (int degrees = 0; degrees < 360; degrees += 23) {
      RgbImage image =
          drawn(
              600, 300, new Code("DR-0401", 150, 150, degrees), new Code("B", 450, 150, -degrees));
      List<String> texts = FindTags.in(image).stream().map(TagSighting::text).sorted().toList();
      assertEquals(List.of("B", "DR-0401"), texts, degrees + " degrees");
    }
  }

  @Test
  void cornersLieOnTheCodesCorners() {
    for (int degrees = 0; degrees < 360; degrees += 37) {
      Code code = new Code("DR-0401", 150.3, 149.8, degrees);
      TagSighting tag = FindTags.in(drawn(300, 300, code)).get(0);
      for (int i = 0; i < 4; i++) {
        // A tenth of a pixel where finder patterns are; the third corner is carried on to.
        double limit = i == 2 ? 0.5 : 0.12;
        double off = code.corner(i).distancePx(tag.cornersPx().get(i));
        assertTrue(off < limit, degrees + " degrees, corner " + i + " off " + off);
      }
      assertEquals(Code.MODULE_PX, tag.modulePx(), 0.05);
    }
  }

  @Test
  void aTextTooLongForAnIdIsReportedAndNotUsable() {
    Code code = new Code("raft-ids-have-thirty-two-characters-at-most", 200, 200, 0);
    TagSighting tag = FindTags.in(drawn(400, 400, code)).get(0);
    assertFalse(tag.usable());
    assertEquals("the tag's text has 43 characters; a raft's id has at most 32", tag.unusable());
  }

  @Test
  void aTextWithControlCharactersIsNotUsable() {
    TagSighting tag = FindTags.in(drawn(300, 300, new Code("a\nb", 150, 150, 0))).get(0);
    assertEquals("the tag's text has characters that cannot be printed", tag.unusable());
  }

  @Test
  void aSmallTagIsReadWhenEnlarged() {
    RgbImage image = drawn(300, 300, new Code("DR-0401", 150, 150, 10));
    List<TagSighting> tags = FindTags.in(image, PictureRegion.around(new PointPx(150, 150), 90), 2);
    assertEquals("DR-0401", tags.get(0).text());
    assertEquals(150, tags.get(0).centrePx().xPx(), 0.2);
  }

  @Test
  void noiseAndTinyPicturesHoldNoTags() {
    Random random = new Random(1);
    for (int size : new int[] {1, 2, 20, 21, 40, 200}) {
      byte[] rgb = new byte[3 * size * size];
      random.nextBytes(rgb);
      assertEquals(List.of(), FindTags.in(RgbImage.of(size, size, rgb)));
      assertEquals(List.of(), FindMarkers.in(RgbImage.of(size, size, rgb)));
    }
    RgbImage narrow = RgbImage.of(1, 500, new byte[1500]);
    assertEquals(List.of(), FindTags.in(narrow, new PictureRegion(-50, 900, 10, 10), 4));
  }

  @Test
  void anEnlargementBeyondFourIsRefused() {
    RgbImage image = RgbImage.of(1, 1, new byte[3]);
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> FindTags.in(image, new PictureRegion(0, 0, 1, 1), 5));
    assertEquals("enlarge must be 1 to 4, got 5", e.getMessage());
  }

  /** A code drawn about a place, turned clockwise. */
  private record Code(String text, double x, double y, double degrees) {
    static final double MODULE_PX = 5;

    PointPx corner(int i) {
      double half = QrCells.of(text).length * MODULE_PX / 2;
      double u = i == 1 || i == 2 ? half : -half;
      double v = i >= 2 ? half : -half;
      double a = Math.toRadians(degrees);
      return new PointPx(
          x + u * Math.cos(a) - v * Math.sin(a), y + u * Math.sin(a) + v * Math.cos(a));
    }

    /** Returns the light of a module, -1 outside the code. */
    double at(boolean[][] white, double px, double py) {
      double a = Math.toRadians(degrees);
      double u = (px - x) * Math.cos(a) + (py - y) * Math.sin(a);
      double v = -(px - x) * Math.sin(a) + (py - y) * Math.cos(a);
      int column = (int) Math.floor(u / MODULE_PX + white.length / 2.0);
      int row = (int) Math.floor(v / MODULE_PX + white.length / 2.0);
      boolean on = row >= 0 && column >= 0 && row < white.length && column < white.length;
      return on && !white[row][column] ? 0.03 : 0.8;
    }
  }

  @Test
  void aLargePhotosTagIsFoundCoarselyAtTheSamePlace() {
    RgbImage large = enlarged(drawn(400, 400, new Code("DR-0401", 200, 190, 20)), 8);

    TagSighting coarse = CoarsePhoto.of(large).tags().get(0);
    TagSighting full = FindTags.in(large).get(0);

    assertEquals(full.text(), coarse.text());
    for (int i = 0; i < 4; i++) {
      // Drawn in squares of 8 px, 40 px a module: an edge is told to about one square.
      assertEquals(0, full.cornersPx().get(i).distancePx(coarse.cornersPx().get(i)), 12);
    }
    assertEquals(List.of(), CoarsePhoto.of(large).markers());
  }

  private static RgbImage enlarged(RgbImage image, int times) {
    int width = image.width() * times;
    byte[] rgb = new byte[3 * width * image.height() * times];
    for (int i = 0; i < rgb.length; i++) {
      int x = i / 3 % width / times;
      int y = i / 3 / width / times;
      rgb[i] = (byte) image.value(x, y, i % 3);
    }
    return RgbImage.of(width, image.height() * times, rgb);
  }

  private static RgbImage drawn(int width, int height, Code... codes) {
    byte[] rgb = new byte[3 * width * height];
    for (Code code : codes) {
      boolean[][] white = QrCells.of(code.text());
      for (int i = 0; i < width * height; i++) {
        int x = i % width;
        int y = i / width;
        if (Math.hypot(x - code.x(), y - code.y()) < 145 || codes.length == 1) {
          byte value = (byte) Math.round(255 * encoded(mean(code, white, x, y)));
          rgb[3 * i] = value;
          rgb[3 * i + 1] = value;
          rgb[3 * i + 2] = value;
        }
      }
    }
    return RgbImage.of(width, height, rgb);
  }

  private static double mean(Code code, boolean[][] white, int x, int y) {
    double sum = 0;
    for (int k = 0; k < 49; k++) {
      sum += code.at(white, x + (k % 7 - 3) / 7.0, y + (Math.floorDiv(k, 7) - 3) / 7.0) / 49;
    }
    return sum;
  }

  private static double encoded(double light) {
    return 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
  }
}
