// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferUShort;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.DeckImage;

class SeeHeightsTest {
  private static final SecondCamera PHOTOS = TwoCameras.camera(SecondCamera.Sees.PHOTO);
  private static final SecondCamera DEPTHS = TwoCameras.camera(SecondCamera.Sees.DEPTH);

  private static byte[] png(RgbImage image) throws IOException {
    BufferedImage picture =
        new BufferedImage(image.width(), image.height(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < image.height(); y++) {
      for (int x = 0; x < image.width(); x++) {
        int level = image.value(x, y, 0);
        picture.setRGB(x, y, (level << 16) | (level << 8) | level);
      }
    }
    return bytes(picture);
  }

  private static byte[] depthPng() throws IOException {
    BufferedImage picture =
        new BufferedImage(TwoCameras.width(), TwoCameras.height(), BufferedImage.TYPE_USHORT_GRAY);
    short[] to = ((DataBufferUShort) picture.getRaster().getDataBuffer()).getData();
    System.arraycopy(TwoCameras.depths(), 0, to, 0, to.length);
    return bytes(picture);
  }

  private static byte[] bytes(BufferedImage picture) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(picture, "png", out);
    return out.toByteArray();
  }

  private static Heights see(byte[] second, SecondCamera camera) {
    SecondPicture picture = SecondPicture.decode(second, camera).picture().orElseThrow();
    return SeeHeights.over(TwoCameras.firstPhoto(), picture, TwoCameras.board(), TwoCameras.deck());
  }

  /** Heights of deck pixels well inside the block's top as seen, or well outside of it. */
  private static double[] heights(HeightMap map, boolean block) {
    DeckImage deck = TwoCameras.deck();
    double[] mm = new double[map.width() * map.height()];
    int n = 0;
    for (int i = 0; i < mm.length; i++) {
      PointMm p = deck.toMm(new PointPx(i % map.width(), Math.floorDiv(i, map.width())));
      PointMm top = TwoCameras.first().toHeight(TwoCameras.first().toPhoto(p), TwoCameras.BLOCK_MM);
      boolean inside = top.xMm() > 108 && top.xMm() < 192 && top.yMm() > 128 && top.yMm() < 272;
      boolean outside = p.xMm() < 70 || p.xMm() > 240 || p.yMm() < 100 || p.yMm() > 310;
      if (map.seen(i) && (block ? inside : outside)) {
        mm[n++] = map.mm(i);
      }
    }
    double[] seen = Arrays.copyOf(mm, n);
    Arrays.sort(seen);
    return seen;
  }

  private static void standsAsItShould(HeightMap map, double within) {
    double[] block = heights(map, true);
    double[] deck = heights(map, false);
    // 84 x 144 px of block, of 1 mm; the deck outside is over half the board.
    assertTrue(block.length > 0.95 * 84 * 144, "block pixels " + block.length);
    assertTrue(deck.length > 0.4 * 300 * 400, "deck pixels " + deck.length);
    assertEquals(TwoCameras.BLOCK_MM, block[block.length / 2], within);
    assertEquals(TwoCameras.BLOCK_MM, block[block.length / 20], 3 * within);
    assertEquals(0, deck[deck.length / 2], within);
    assertEquals(0, deck[deck.length / 20], 3 * within);
  }

  @Test
  void aBlockStandsAtItsHeightAndTheDeckAtNought() throws IOException {
    Heights heights = see(png(TwoCameras.secondPhoto(0)), PHOTOS);
    // A px of disparity is 800^2 / (850 * 70) = 10.8 mm: a fifth of a px.
    standsAsItShould(assertInstanceOf(HeightMap.class, heights), 2.2);
    assertEquals(HeightSource.STEREO, ((HeightMap) heights).source());
  }

  @Test
  void deckHiddenFromTheSecondCameraHasNoHeight() throws IOException {
    HeightMap map = assertInstanceOf(HeightMap.class, see(png(TwoCameras.secondPhoto(0)), PHOTOS));
    int holes = 0;
    for (int i = 0; i < map.width() * map.height(); i++) {
      holes += map.seen(i) ? 0 : 1;
    }
    // Over the block's edge the second camera misses a strip of 70 * 60 / (800 - 60) = 5.7 mm by
    // 160 mm, 900 px; the block's own edges are rough by some px.
    assertTrue(holes > 300, "holes " + holes);
    assertTrue(holes < 0.05 * map.width() * map.height(), "holes " + holes);
  }

  @Test
  void rowsThatLieALittleApartAreMended() throws IOException {
    Heights heights = see(png(TwoCameras.secondPhoto(1.5)), PHOTOS);
    // The second camera is tilted so that things lie 1.5 px lower at its 860 px, here at 850.
    assertEquals(1.5, heights.rowsPx().orElseThrow(), 0.15);
    assertEquals(
        0,
        see(png(TwoCameras.secondPhoto(0)), PHOTOS).rowsPx().orElseThrow(),
        0.15,
        "as calibrated");
    standsAsItShould(assertInstanceOf(HeightMap.class, heights), 3.5);
  }

  @Test
  void rowsThatLieFarApartAreSaidAndNotMatched() throws IOException {
    NoHeights none = assertInstanceOf(NoHeights.class, see(png(TwoCameras.secondPhoto(6)), PHOTOS));
    assertTrue(Math.abs(none.rowsPx().orElseThrow()) > 4, "told all the same, for the chart");
    assertTrue(
        none.reason().matches("the two cameras' rows lie [56]\\.\\d px apart: one has moved"),
        none.reason());
    assertEquals(
        "see that the second camera sits firmly, then calibrate the pair again (station pair)",
        none.remedy());
  }

  @Test
  void aDepthPictureGivesTheSameHeights() throws IOException {
    Heights heights = see(depthPng(), DEPTHS);
    // Depths are whole mm.
    standsAsItShould(assertInstanceOf(HeightMap.class, heights), 0.7);
    assertEquals(HeightSource.DEPTH, ((HeightMap) heights).source());
  }

  @Test
  void aPictureThatIsNoDepthPictureIsSaid() throws IOException {
    NoHeights none =
        SecondPicture.decode(png(TwoCameras.secondPhoto(0)), DEPTHS).none().orElseThrow();
    assertEquals("the depth picture is no grey picture of 16 bits", none.reason());
    assertEquals("save depth as 16-bit PNG in mm, 0 where none was measured", none.remedy());
  }

  @Test
  void aPhotoOfAnotherShapeIsSaid() throws IOException {
    RgbImage square = RgbImage.of(100, 100, new byte[30_000]);
    assertEquals(
        "the second camera's picture is 100 x 100 px, its station says 420 x 520: not the same"
            + " shape",
        SecondPicture.decode(png(square), PHOTOS).none().orElseThrow().reason());
  }

  @Test
  void aCutPhotoIsSaid() {
    NoHeights none = SecondPicture.decode(new byte[0], PHOTOS).none().orElseThrow();
    assertTrue(
        none.reason().startsWith("the second camera's photo cannot be used: "), none.reason());
  }
}
