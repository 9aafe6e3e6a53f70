// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.TagPlace;
import org.raftgauge.core.grader.HeightFit;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.plant.GrowPlant;
import org.raftgauge.proving.plant.Habit;
import org.raftgauge.proving.plant.PlantOrder;
import org.raftgauge.proving.plant.Tone;
import org.raftgauge.proving.set.LayoutText;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.truth.MeasureTruth;
import org.raftgauge.proving.truth.PlantTruth;

/**
 * A passing station over boards of 18 holes, and the crop that it photographs: 1.25 mm a pixel.
 *
 * @param habit of the crop
 * @param pitchMm from hole to hole, both ways: 260 leaves plants of some 450 cm2 apart, over 180
 *     they close
 */
record SeasonBench(Habit habit, double pitchMm) {
  private static final double HEIGHT_MM = 1600;
  private static final double MM_PER_PX = 1.25;

  /** Room beside the board in the picture, both sides together, mm. */
  private static final double ROOM_MM = 230;

  private static final double MARK_MM = 34;

  /** Plants of 5 to 500 cm2 from which the crop's height model comes. */
  private static final int HEIGHT_PLANTS = 12;

  Layout layout() {
    double width = 2 * pitchMm + 240;
    double length = 5 * pitchMm + 300;
    List<PointMm> corners =
        List.of(
            new PointMm(MARK_MM, MARK_MM),
            new PointMm(width - MARK_MM, MARK_MM),
            new PointMm(width - MARK_MM, length - MARK_MM),
            new PointMm(MARK_MM, length - MARK_MM));
    return new Layout(
        "season-" + Math.round(pitchMm),
        Optional.empty(),
        new Board(width, length),
        new SiteGrid(6, 3, 120, 170, pitchMm, pitchMm, 0),
        Optional.of(new CornerMarkers(40, corners)),
        Optional.of(new TagPlace(width / 2, 54, 80)),
        Optional.empty());
  }

  private int widthPx() {
    return (int) Math.round((layout().board().widthMm() + ROOM_MM) / MM_PER_PX);
  }

  private int heightPx() {
    return (int) Math.round((layout().board().lengthMm() + ROOM_MM) / MM_PER_PX);
  }

  private Lens lens() {
    double focal = HEIGHT_MM / MM_PER_PX;
    return new Lens(
        focal, focal, widthPx() / 2.0 + 3, heightPx() / 2.0 - 4, -0.09, 0.025, 0.0004, -0.0003, 0);
  }

  /** Draws where the camera hangs over one raft: no raft floats twice at the same place. */
  Camera camera(Random random) {
    Board board = layout().board();
    Hold hold =
        new Hold(
            board.widthMm() / 2 + 8 * random.nextGaussian(),
            board.lengthMm() / 2 + 8 * random.nextGaussian(),
            HEIGHT_MM * (1 + 0.002 * random.nextGaussian()),
            0.02 * random.nextGaussian(),
            0.006 * random.nextGaussian(),
            0.006 * random.nextGaussian());
    return new Camera(lens(), widthPx(), heightPx(), hold);
  }

  /** Grows one plant of the crop. */
  Mesh plant(double areaCm2, long seed) {
    return GrowPlant.grow(new PlantOrder(habit, Tone.LIGHT_GREEN, areaCm2, seed));
  }

  /** Returns what the book says of the place. */
  SeasonPlace place(long seed) {
    Lens l = lens();
    String station =
        String.format(
            Locale.ROOT,
            "kind: passing%ncameras: 1%nimage_width_px: %d%nimage_height_px: %d%nlens: {fx_px:"
                + " %.4f, fy_px: %.4f, cx_px: %.3f, cy_px: %.3f, k1: %.6f, k2: %.6f, p1: %.6f,"
                + " p2: %.6f}%ncamera_height_mm: %.1f%n",
            widthPx(),
            heightPx(),
            l.fxPx(),
            l.fyPx(),
            l.cxPx(),
            l.cyPx(),
            l.k1(),
            l.k2(),
            l.p1(),
            l.p2(),
            HEIGHT_MM);
    return new SeasonPlace(layout().name(), LayoutText.of(layout()), station, heights(seed));
  }

  /** Fits the crop's height model to plants that are none of the season's. */
  private HeightModel heights(long seed) {
    List<HeightFit.Sample> samples =
        IntStream.range(0, HEIGHT_PLANTS)
            .mapToObj(
                i -> {
                  double area = 5 * Math.pow(100, i / (HEIGHT_PLANTS - 1.0));
                  PlantTruth t = truth(plant(area, seed * 53 + i));
                  return new HeightFit.Sample(
                      t.projectedAreaCm2(), t.topHeightMm(), OptionalDouble.of(t.meanHeightMm()));
                })
            .toList();
    return HeightFit.fit(samples).orElseThrow().model();
  }

  private static PlantTruth truth(Mesh plant) {
    Mesh owned = new Mesh();
    owned.append(plant, new Placement(0, 0, 0), 1);
    return MeasureTruth.measure(owned).get(1);
  }
}
