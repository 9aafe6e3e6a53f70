// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.raftgauge.core.pixels.RgbImage;

class PhotoQualityTest {
  // A hard edge: differences are one 1, blurred ones the kernel's taps, whose squares sum to
  // C(16, 8) / 2^16 = 12870 / 65536 (Vandermonde's identity on the binomial row of order 8).
  private static final double HARD_EDGE = 1 - 12870 / 65536.0;

  @Test
  void hardEdgesHaveTheSharpnessOfTheFormula() {
    assertEquals(HARD_EDGE, PhotoQuality.judge(squares(400, 400, 50)).sharpness(), 1e-6);
  }

  @Test
  void aFlatPictureHasNoSharpness() {
    RgbImage flat = TestLight.change(squares(200, 100, 50), level -> 90);
    assertEquals(0, PhotoQuality.judge(flat).sharpness());
  }

  @Test
  void aPictureTooSmallForTheKernelHasNoSharpness() {
    assertEquals(0, PhotoQuality.judge(squares(9, 400, 3)).sharpness());
    assertEquals(0, PhotoQuality.judge(squares(400, 9, 3)).sharpness());
    assertEquals(0, PhotoQuality.judge(squares(1, 1, 1)).sharpness());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void sharpnessFallsWithEveryBlur(long seed) {
    assertFalls(TestPictures.toRgb(TestPictures.board(400, 300, seed)), 0.7, 1.2, 2, 3.5, 6);
    // Noise blurred further has a contrast of 3 levels left, where rounding makes edges of its own.
    assertFalls(TestPictures.toRgb(TestPictures.noise(150, 120, seed)), 0.7, 1.2, 2);
  }

  @Test
  void sharpnessFallsWithEveryBlurOnRealPhotos() throws IOException {
    List<Path> pictures = new ArrayList<>(SharedFiles.pictures("path-traced/photos"));
    pictures.addAll(SharedFiles.pictures("tag-photos/markers"));
    for (int i = 0; i < pictures.size(); i += 8) {
      assertFalls(TestLight.middle(decode(pictures.get(i)), 400), 0.7, 1.2, 2, 3.5);
    }
  }

  @Test
  void aBlurAlongOneDirectionCountsInFull() {
    RgbImage board = TestPictures.toRgb(TestPictures.board(500, 400, 8));
    double moved = PhotoQuality.judge(TestLight.blurAlongX(board, 3)).sharpness();
    double blurred = PhotoQuality.judge(TestLight.blur(board, 3)).sharpness();
    double sharp = PhotoQuality.judge(board).sharpness();
    // Blurring the other direction too may change the worse one by little.
    assertEquals(blurred, moved, 0.1 * (sharp - blurred));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.25, 0.125})
  void sharpnessHardlyChangesWithTheLight(double light) {
    RgbImage board = TestPictures.toRgb(TestPictures.board(500, 400, 9));
    RgbImage blurred = TestLight.blur(board, 1.5);
    // 0.02: an eighth of the light leaves about 80 levels, so that rounding adds noise.
    assertEquals(
        PhotoQuality.judge(board).sharpness(),
        PhotoQuality.judge(TestLight.expose(board, light)).sharpness(),
        0.02);
    assertEquals(
        PhotoQuality.judge(blurred).sharpness(),
        PhotoQuality.judge(TestLight.expose(blurred, light)).sharpness(),
        0.02);
  }

  @Test
  void aPhotoOfTwiceTheResolutionGetsTheSameVerdict() {
    RgbImage board = TestPictures.toRgb(TestPictures.board(1000, 700, 10));
    // Each pixel repeated 2 x 2: the same scene and blur, seen by four times the pixels.
    assertEquals(PhotoQuality.judge(board), PhotoQuality.judge(TestLight.doubled(board)));
  }

  @Test
  void clippedPixelsAreThoseWithAFullChannelOrNoLightAtAll() {
    RgbImage image = squares(400, 400, 50);
    assertEquals(0, PhotoQuality.judge(image).exposureClippedFraction());
    // Half of the squares are at 200, half at 40.
    RgbImage blown = TestLight.change(image, level -> level > 100 ? 255 : level);
    assertEquals(0.5, PhotoQuality.judge(blown).exposureClippedFraction());
    RgbImage drowned = TestLight.change(image, level -> level > 100 ? level : 0);
    assertEquals(0.5, PhotoQuality.judge(drowned).exposureClippedFraction());
    byte[] oneChannel = {(byte) 255, 10, 10, 0, 0, 9};
    assertEquals(0.5, PhotoQuality.judge(RgbImage.of(2, 1, oneChannel)).exposureClippedFraction());
  }

  @Test
  void levelsAreSharesOfFullScale() {
    PhotoQuality quality = PhotoQuality.judge(squares(400, 400, 50));
    // Half of the picture at 200, half at 40: mean 120; patches of 8 px lie in one square or over
    // an edge, the brightest at 200.
    assertEquals(120 / 255.0, quality.meanLevel(), 1e-9);
    assertEquals(200 / 255.0, quality.brightLevel(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 5, 10, 20, 30})
  void aNightFrameIsDarkHoweverNoisy(double noiseLevels) {
    RgbImage black = TestLight.change(squares(1000, 750, 50), level -> 0);
    assertTrue(PhotoQuality.judge(TestLight.addNoise(black, noiseLevels, 4)).dark());
  }

  @Test
  void aPilotLampDoesNotMakeANightFrameLight() {
    RgbImage black = TestLight.change(squares(1000, 750, 50), level -> 0);
    byte[] rgb = black.rgb().clone();
    for (int i = 0; i < 3 * 60 * 60; i++) {
      rgb[3 * (1000 * (300 + i / 180) + 500) + i % 180] = (byte) 255;
    }
    assertTrue(PhotoQuality.judge(RgbImage.of(1000, 750, rgb)).dark());
  }

  @Test
  void anEighthOfTheLightIsDimButNotDark() {
    RgbImage board = TestPictures.toRgb(TestPictures.board(1000, 750, 11));
    assertFalse(PhotoQuality.judge(TestLight.expose(board, 0.125)).dark());
    // A two-hundredth is: 205 becomes 10 of 255 by the sRGB curve.
    assertTrue(PhotoQuality.judge(TestLight.expose(board, 0.005)).dark());
  }

  @Test
  void noRealPhotoIsDarkEvenAtAnEighthOfItsLight() throws IOException {
    List<String> dark = new ArrayList<>();
    for (String name : List.of("path-traced/photos", "real-canopy", "tag-photos")) {
      List<Path> pictures =
          SharedFiles.pictures(name).stream()
              .filter(file -> !file.toString().matches(".*([Mm]ask|[Ll]abel).*"))
              .toList();
      for (int i = 0; i < pictures.size(); i += 12) {
        if (PhotoQuality.judge(TestLight.expose(decode(pictures.get(i)), 0.125)).dark()) {
          dark.add(pictures.get(i).getFileName().toString());
        }
      }
    }
    assertEquals(List.of(), dark);
  }

  @Test
  void aMeasureOutOfRangeIsAWrongCall() {
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> new PhotoQuality(1.5, 0, 0, 0, false));
    assertEquals("each measure must be in 0..1, got 1.5", thrown.getMessage());
    assertThrows(
        IllegalArgumentException.class, () -> new PhotoQuality(Double.NaN, 0, 0, 0, false));
  }

  private static void assertFalls(RgbImage image, double... sigmasPx) {
    double last = PhotoQuality.judge(image).sharpness();
    for (double sigmaPx : sigmasPx) {
      double next = PhotoQuality.judge(TestLight.blur(image, sigmaPx)).sharpness();
      assertTrue(next < last, "blur of " + sigmaPx + " px: " + last + " then " + next);
      last = next;
    }
  }

  private static RgbImage decode(Path file) throws IOException {
    return ((DecodedPhoto) DecodePhoto.decode(Files.readAllBytes(file))).image();
  }

  /** Returns a board of grey squares at 200 and 40. */
  private static RgbImage squares(int width, int height, int sidePx) {
    byte[] rgb = new byte[3 * width * height];
    for (int i = 0; i < rgb.length; i++) {
      int x = i / 3 % width;
      int y = i / 3 / width;
      rgb[i] = (byte) ((x / sidePx + y / sidePx) % 2 == 0 ? 200 : 40);
    }
    return RgbImage.of(width, height, rgb);
  }
}
