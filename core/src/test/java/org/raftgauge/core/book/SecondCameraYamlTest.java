// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SecondCameraYamlTest {
  private static final String SECOND =
      """
      cameras: 2
      second_camera:
        file_mark: _right
        first_file_mark: _left
        image_width_px: 1280
        image_height_px: 960
        lens: {fx_px: 1400}
        turn_deg: [0.5, -1, 0]
        shift_mm: [-90, 3, 0]
      kind:""";

  @TempDir private Path folder;

  private CropBook sound(String kind) {
    return BookFolder.in(folder).change("stations/bench.yaml", "kind:", kind).sound();
  }

  private List<String> problems(String kind) {
    return BookFolder.in(folder).change("stations/bench.yaml", "kind:", kind).problems();
  }

  @Test
  void aSecondCameraIsReadWithItsPlaceAndItsMarks() {
    SecondCamera second = sound(SECOND).station("bench").orElseThrow().second().orElseThrow();
    assertEquals(SecondCamera.Sees.PHOTO, second.sees());
    assertEquals(1280, second.imageWidthPx());
    // The picture's middle stands in for a principal point that is not given: (1280 - 1) / 2.
    assertEquals(639.5, second.lens().cxPx());
    assertEquals(List.of(0.5, -1.0, 0.0), second.turnDeg());
    // The root of 90^2 + 3^2.
    assertEquals(Math.sqrt(8109), second.baselineMm(), 1e-12);
  }

  @Test
  void namesOfBothCamerasDifferByTheMarksAlone() {
    SecondCamera second = sound(SECOND).station("bench").orElseThrow().second().orElseThrow();
    assertTrue(second.took("tonight/DR-1_right.jpg"));
    assertFalse(second.took("tonight/DR-1_left.jpg"));
    assertEquals("tonight/DR-1_left", second.firstName("tonight/DR-1_right.png"));
    assertEquals("a.b/c", SecondCamera.stem("a.b/c"));
  }

  @Test
  void aDepthCameraMayStandWhereTheFirstStands() {
    String depth =
        SECOND
            .replace("  file_mark", "  sees: depth\n  file_mark")
            .replace("[-90, 3, 0]", "[0, 0, 0]");
    assertEquals(
        SecondCamera.Sees.DEPTH,
        sound(depth).station("bench").orElseThrow().second().orElseThrow().sees());
  }

  @Test
  void twoCamerasWithoutASecondOneAreAnErrorWithARemedy() {
    assertEquals(
        List.of(
            "stations/bench.yaml:1:10: cameras: there is no second_camera beside it; calibrate it"
                + " by: raftgauge station pair, or write 1"),
        problems("cameras: 2\nkind:"));
  }

  @Test
  void aSecondCameraBesideOneCameraIsAnError() {
    assertEquals(
        List.of(
            "stations/bench.yaml:3:3: second_camera: the station has one camera; write cameras: 2,"
                + " or delete second_camera"),
        problems(SECOND.replace("cameras: 2", "cameras: 1")));
  }

  @Test
  void camerasInOnePlaceAreAnError() {
    assertEquals(
        List.of(
            "stations/bench.yaml:9:13: second_camera.shift_mm: the cameras stand 0.0 mm apart;"
                + " calibrate it by: raftgauge station pair"),
        problems(SECOND.replace("[-90, 3, 0]", "[0, 0, 0]")));
  }
}
