// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.plant.GrowPlant;
import org.raftgauge.proving.plant.Habit;
import org.raftgauge.proving.plant.PlantOrder;
import org.raftgauge.proving.plant.Tone;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.scene.Medium;
import org.raftgauge.proving.scene.Pond;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Shapes;
import org.raftgauge.proving.solid.Tint;
import org.raftgauge.proving.truth.MeasureTruth;

final class RenderPhotoTest {
  private static final double HIGH_MM = 1000;
  private static final double FOCAL_PX = 1500;

  private static Scene scene(Mesh plant) {
    Layout layout =
        new Layout(
            "test",
            Optional.empty(),
            new Board(400, 400),
            new SiteGrid(1, 1, 200, 200, 100, 100, 0),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    BoardLook look =
        new BoardLook(
            new Tint(0.8, 0.8, 0.8), 0, 0, 0, Medium.of(new Tint(0.05, 0.04, 0.03)), false, 1);
    Sown sown = new Sown(new SiteId(0, 0), "ok", Optional.of(plant), true);
    Raft raft = new Raft("T", layout, Placement.NONE, look, List.of(sown), 7);
    Tint dark = new Tint(0.02, 0.03, 0.02);
    return new Scene(
        List.of(raft),
        List.of(),
        new Pond(new Box(-900, -900, 900, 900), dark, dark, 30, 1),
        new Mesh());
  }

  private static Exposure render(Mesh plant) {
    Light light =
        new Light(
            new Tint(1, 1, 1), new Tint(0, 0, 0), 0.3, 0.2, 0.1, new Light.Field(0, 0, 0, 0, 1));
    Lens lens = new Lens(FOCAL_PX, FOCAL_PX, 299.5, 299.5, 0, 0, 0, 0, 0);
    Camera camera = new Camera(lens, 600, 600, new Hold(200, 200, HIGH_MM, 0, 0, 0));
    return RenderPhoto.render(scene(plant), camera, light);
  }

  /** Area on the deck plane that the coverage amounts to, cm2. */
  private static double imagedCm2(Exposure view) {
    double sum = 0;
    for (byte value : view.coverage()) {
      sum += (value & 0xff) / 255.0;
    }
    double mmPerPx = HIGH_MM / FOCAL_PX;
    return sum * mmPerPx * mmPerPx / 100;
  }

  @Test
  void aPlateOnTheDeckIsImagedAtItsOwnArea() {
    // 10 cm * 10 cm; edges sampled in thirds of 0.67 mm pixels
    assertEquals(100, imagedCm2(render(Shapes.plate(100, 0.01, 0))), 0.5);
  }

  @Test
  void aRaisedPlateIsImagedLargerByTheSquareOfItsDistances() {
    // (1000 / (1000 - 100))^2 = 1.2346
    assertEquals(123.46, imagedCm2(render(Shapes.plate(100, 100, 0))), 0.6);
  }

  @Test
  void everyLabelledPixelBelongsToThePlantAndIsMostlyCovered() {
    Exposure view = render(Shapes.disc(60, 20));
    int labelled = 0;
    for (int i = 0; i < view.label().length; i++) {
      if (view.label()[i] != 0) {
        labelled++;
        assertEquals(7, view.label()[i]);
        assertTrue((view.coverage()[i] & 0xff) > 127, "covered by half or less at " + i);
      }
    }
    // pi * 36 cm2 / 0.98^2 on the deck plane, in cells of (1 / 1.5 mm)^2
    double expected = Math.PI * 60 * 60 / (0.98 * 0.98) * 1.5 * 1.5;
    assertEquals(expected, labelled, 0.005 * expected);
  }

  @Test
  void theImagedAreaOfALowPlantAgreesWithItsTruth() {
    Mesh plant = GrowPlant.grow(new PlantOrder(Habit.BUTTERHEAD, Tone.GREEN, 60, 3));
    Scene scene = scene(plant);
    double truth = MeasureTruth.measure(scene.mesh()).get(7).projectedAreaCm2();
    double mean = MeasureTruth.measure(scene.mesh()).get(7).meanHeightMm();
    double scale = Math.pow((HIGH_MM - mean) / HIGH_MM, 2);
    // one mean height stands for a whole plant, seen by a near camera: a few percent are left
    assertEquals(truth, imagedCm2(render(plant)) * scale, 0.04 * truth);
  }

  @Test
  void aLeafIsGreenAndTheBoardIsNot() {
    Exposure view = render(Shapes.disc(60, 20));
    int leaf = 3 * (300 * 600 + 300);
    int board = 3 * (60 * 600 + 60);
    assertTrue(view.rgb()[leaf + 1] > 2 * view.rgb()[leaf], "leaf is not green");
    assertEquals(view.rgb()[board], view.rgb()[board + 1], 0.05 * view.rgb()[board]);
  }
}
