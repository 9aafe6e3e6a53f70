// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.GreyImage;

/** The truth is how far a speckled picture was shifted; a shift by whole pixels is exact. */
class MatchRowsTest {
  private static final int WIDTH = 200;
  private static final int HEIGHT = 120;
  private static final MatchRows.Range RANGE = new MatchRows.Range(0, 32);

  /** Grey specks of two pixels, each row of its own. */
  private static byte[] specks() {
    Random random = new Random(3);
    byte[] levels = new byte[WIDTH * HEIGHT];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = i % 2 == 0 ? (byte) random.nextInt(256) : levels[i - 1];
    }
    return levels;
  }

  /** Returns what a second camera sees: the back at one disparity, a middle square at another. */
  private static byte[] shifted(byte[] left, int back, int square) {
    byte[] right = new byte[left.length];
    for (int pass = 0; pass < 2; pass++) {
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < WIDTH; x++) {
          int to = x - (pass == 0 ? back : square);
          if (to >= 0 && inSquare(x, y) == (pass == 1)) {
            right[y * WIDTH + to] = left[y * WIDTH + x];
          }
        }
      }
    }
    return right;
  }

  private static boolean inSquare(int x, int y) {
    return x >= 90 && x < 150 && y >= 30 && y < 90;
  }

  @Test
  void everyAnswerIsTheShiftAndNearlyAllPixelsAnswer() {
    byte[] left = specks();
    float[] px = MatchRows.disparities(picture(left), picture(shifted(left, 6, 20)), RANGE);
    int asked = 0;
    int answered = 0;
    int right = 0;
    for (int y = 10; y < HEIGHT - 10; y++) {
      for (int x = 60; x < WIDTH - RANGE.count(); x++) {
        boolean clear = Math.abs(x - 90) > 16 && Math.abs(x - 150) > 8;
        clear &= Math.abs(y - 30) > 6 && Math.abs(y - 90) > 6;
        float found = px[y * WIDTH + x];
        asked += clear ? 1 : 0;
        answered += clear && !Float.isNaN(found) ? 1 : 0;
        right += clear && Math.abs(found - (inSquare(x, y) ? 20 : 6)) <= 0.25 ? 1 : 0;
      }
    }
    assertTrue(answered > 0.97 * asked, answered + " of " + asked);
    assertTrue(right > 0.995 * answered, right + " of " + answered);
  }

  @Test
  void whatTheSquareHidesFromTheSecondCameraGetsNoAnswer() {
    byte[] left = specks();
    float[] px = MatchRows.disparities(picture(left), picture(shifted(left, 6, 20)), RANGE);
    // The square moves 14 px further than the back, and covers that much of it on its left.
    int hidden = 0;
    int silent = 0;
    for (int y = 36; y < 84; y++) {
      for (int x = 79; x < 87; x++) {
        hidden++;
        silent += Float.isNaN(px[y * WIDTH + x]) ? 1 : 0;
      }
    }
    assertTrue(silent > 0.8 * hidden, silent + " of " + hidden);
  }

  @Test
  void flatPicturesGiveNoAnswer() {
    byte[] flat = new byte[WIDTH * HEIGHT];
    Arrays.fill(flat, (byte) 128);
    float[] px = MatchRows.disparities(picture(flat), picture(flat), RANGE);
    for (int i = 0; i < px.length; i++) {
      assertTrue(Float.isNaN(px[i]) || Math.abs(px[i]) <= RANGE.count(), "pixel " + i);
    }
    assertEquals(List.of(), MatchRows.corners(picture(flat), picture(flat)));
  }

  @Test
  void cornersAreFollowedInRowsAndColumns() {
    byte[] left = blocks();
    byte[] right = new byte[left.length];
    for (int y = 0; y < HEIGHT - 2; y++) {
      for (int x = 0; x < WIDTH - 5; x++) {
        right[y * WIDTH + x] = left[(y + 2) * WIDTH + x + 5];
      }
    }
    List<MatchRows.Match> found = MatchRows.corners(picture(left), picture(right));
    assertTrue(found.size() > 20, "corners: " + found.size());
    double[] dx = found.stream().mapToDouble(m -> m.left().xPx() - m.right().xPx()).toArray();
    double[] dy = found.stream().mapToDouble(m -> m.left().yPx() - m.right().yPx()).toArray();
    Arrays.sort(dx);
    Arrays.sort(dy);
    assertEquals(5, dx[dx.length / 2], 0.1);
    assertEquals(2, dy[dy.length / 2], 0.1);
  }

  /** Blocks of 12 px and random grey, whose corners can be followed. */
  private static byte[] blocks() {
    Random random = new Random(5);
    int across = WIDTH / 12 + 1;
    int[] grey = random.ints(across * (HEIGHT / 12 + 1L), 20, 235).toArray();
    byte[] levels = new byte[WIDTH * HEIGHT];
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        levels[y * WIDTH + x] = (byte) grey[y / 12 * across + x / 12];
      }
    }
    return levels;
  }

  @Test
  void aRangeIsAMultipleOfSixteen() {
    assertThrows(IllegalArgumentException.class, () -> new MatchRows.Range(0, 20));
  }

  private static GreyImage picture(byte[] levels) {
    return GreyImage.of(WIDTH, HEIGHT, levels);
  }
}
