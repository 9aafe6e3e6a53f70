// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/** Each adapter 200 times: no scope stays open, also when the body throws. */
class EveryAdapterClosesTest {
  private static final int TIMES = 200;
  private static final RgbImage IMAGE = RgbImage.of(40, 30, new byte[3600]);
  private long before;

  @BeforeEach
  void count() {
    before = MatScope.openScopes();
  }

  @AfterEach
  void allAreClosed() {
    assertEquals(before, MatScope.openScopes());
  }

  @Test
  void outlinesAndHulls() {
    byte[] mask = new byte[1200];
    java.util.Arrays.fill(mask, 400, 800, (byte) 255);
    for (int i = 0; i < TIMES; i++) {
      assertEquals(1, TraceOutline.outer(40, 30, mask).size());
      // 400 px fewer than the picture needs leave the rest black; more than it holds are refused.
      assertThrows(RuntimeException.class, () -> TraceOutline.outer(-1, 30, mask));
      assertEquals(
          3,
          TraceOutline.hull(List.of(new PointPx(0, 0), new PointPx(9, 0), new PointPx(0, 9)))
              .size());
      assertThrows(RuntimeException.class, () -> TraceOutline.hull(List.of()));
    }
  }

  @Test
  void markers() {
    for (int i = 0; i < TIMES; i++) {
      for (DetectMarkers.Search search : DetectMarkers.Search.values()) {
        assertEquals(List.of(), DetectMarkers.in(IMAGE, 1, search));
      }
      // A picture of no pixels at this scale: the native resize refuses.
      assertThrows(
          RuntimeException.class,
          () -> DetectMarkers.in(IMAGE, 1e-6, DetectMarkers.Search.CONTOURS));
    }
  }

  @Test
  void distances() {
    boolean[] on = new boolean[1200];
    on[7] = true;
    for (int i = 0; i < TIMES; i++) {
      assertEquals(0, DistanceTo.nearest(on, 40, 30)[7]);
      assertThrows(RuntimeException.class, () -> DistanceTo.nearest(on, -1, 30));
    }
  }

  @Test
  void blobsAndPictures() {
    for (int i = 0; i < TIMES; i++) {
      FindBlobs.rectangles(IMAGE);
      PictureCodec.decode(new byte[] {1, 2, 3});
    }
  }

  @Test
  void aBodyThatThrowsClosesItsScope() {
    for (int i = 0; i < TIMES; i++) {
      IllegalStateException e =
          assertThrows(
              IllegalStateException.class,
              () -> {
                try (MatScope scope = new MatScope()) {
                  scope.of(IMAGE);
                  assertEquals(before + 1, MatScope.openScopes());
                  throw new IllegalStateException("thrown inside");
                }
              });
      assertEquals("thrown inside", e.getMessage());
    }
  }
}
