// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.DrawnPhoto;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.teach.FirstPainting;
import org.raftgauge.core.teach.FitColour;
import org.raftgauge.core.teach.Labels;
import org.raftgauge.core.teach.Lesson;

/**
 * Red leaf taught on two drawn boards and measured on a third, under another light. Colours are
 * those of {@code MeasurePhotoTest}.
 */
class TaughtLeafTest {
  private static final double[] RED_LEAF = {0.107, 0.021, 0.03};

  /** Discs about sites A1, B2 and C3: middle and radius, mm. */
  private static final double[][] DISCS = {{120, 150, 60}, {300, 330, 45}, {480, 510, 30}};

  @TempDir Path folder;

  private static byte[] photo(double... light) {
    DrawnPhoto photo = DrawnPhoto.upright().tagged("DR-1");
    for (double[] d : DISCS) {
      photo.disc(d[0], d[1], d[2], RED_LEAF);
    }
    return photo.light(light).png();
  }

  private static Lesson lesson(CropBook book, byte[] bytes) {
    LightPhoto.Result lit = LightPhoto.light(bytes, PhotoFacts.of(DrawnFarm.NAME), book);
    assertEquals("", lit.refused());
    RgbImage photo = lit.image().orElseThrow();
    byte[] painted = new byte[3 * photo.width() * photo.height()];
    for (int i = 0; i < painted.length / 3; i++) {
      PointPx at = new PointPx(i % photo.width(), Math.floorDiv(i, photo.width()));
      int rgb = colour(lit.boards().get(0).pose().toDeck(at));
      painted[3 * i] = (byte) (rgb >> 16);
      painted[3 * i + 1] = (byte) (rgb >> 8);
      painted[3 * i + 2] = (byte) rgb;
    }
    Labels labels = Labels.read(RgbImage.of(photo.width(), photo.height(), painted));
    return Lesson.of(DrawnFarm.NAME, lit.boards(), labels);
  }

  private static int colour(PointMm p) {
    for (double[] d : DISCS) {
      if (Math.hypot(p.xMm() - d[0], p.yMm() - d[1]) < d[2]) {
        return Tissue.RED.rgb();
      }
    }
    boolean tagOrMarker = p.yMm() < 80 || p.yMm() > 1120 || p.xMm() < 5 || p.xMm() > 595;
    return tagOrMarker ? Labels.IGNORE_RGB : Tissue.BOARD.rgb();
  }

  private static String file(TaughtColour model) {
    String weights =
        model.weights().entrySet().stream()
            .map(
                (Map.Entry<Tissue, List<Double>> e) ->
                    "  " + e.getKey().label() + ": " + e.getValue())
            .collect(Collectors.joining("\n"));
    return "least: " + model.least() + "\nmost: " + model.most() + "\nweights:\n" + weights + "\n";
  }

  @Test
  void redLeafTaughtOnBoardsIsMeasuredUnderAnotherLight() {
    CropBook book = DrawnFarm.book(folder);
    List<Lesson> lessons = new ArrayList<>();
    lessons.add(lesson(book, photo(1, 1, 1)));
    lessons.add(lesson(book, photo(0.8, 0.9, 1)));
    TaughtColour model = FitColour.to("my-red", lessons);
    assertEquals(Optional.empty(), model.ground(), "no open ground was taught");
    CropBook taught =
        DrawnFarm.folder(folder)
            .change("crops.yaml", "colour_model: green-leaf", "colour_model: my-red")
            .with("colour/my-red.yaml", file(model))
            .sound();
    assertEquals(model, taught.crops().get("basil").taught().orElseThrow());

    RaftMeasure raft =
        MeasurePhoto.measure(photo(1, 0.85, 0.7), PhotoFacts.of(DrawnFarm.NAME), taught)
            .measure()
            .rafts()
            .get(0);

    assertEquals("", raft.held());
    double[] expected = new double[18];
    // Sites row by row, three columns: A1 is 0, B2 is 4, C3 is 8; pi r2 in cm2.
    for (int d = 0; d < 3; d++) {
      expected[4 * d] = Math.PI * DISCS[d][2] * DISCS[d][2] / 100;
    }
    for (int s = 0; s < 18; s++) {
      SiteMeasure site = raft.sites().get(s);
      assertEquals("", site.held());
      double found = site.projectedAreaCm2().orElseThrow();
      assertEquals(expected[s], found, 0.03 * expected[s] + 0.05, "site " + site.site());
    }
  }

  @Test
  void aModelThatTheBookLacksHoldsItsSitesAndSaysSo() {
    CropBook broken =
        DrawnFarm.folder(folder)
            .change("crops.yaml", "colour_model: green-leaf", "colour_model: my-red")
            .with("colour/my-red.yaml", "least: [0, 0, 0]\n")
            .read()
            .book();
    RaftMeasure raft =
        MeasurePhoto.measure(photo(1, 1, 1), PhotoFacts.of(DrawnFarm.NAME), broken)
            .measure()
            .rafts()
            .get(0);
    assertEquals(
        "no colour model \"my-red\"; mend colour_model in crops.yaml, or the model's file in the"
            + " book's colour folder",
        raft.sites().get(0).held());
  }

  @Test
  void theFirstPaintingIsWhatWasMeasured() {
    CropBook book = DrawnFarm.book(folder);
    DrawnPhoto drawn = DrawnPhoto.upright().tagged("DR-1");
    drawn.disc(300, 330, 60, 0.117, 0.296, 0.034);
    PhotoResult result = MeasurePhoto.measure(drawn.png(), PhotoFacts.of(DrawnFarm.NAME), book);
    RgbImage photo = result.picture().orElseThrow();
    boolean[] on = new boolean[photo.width() * photo.height()];
    java.util.Arrays.fill(on, photo.width(), on.length, true);
    Labels labels = Labels.read(FirstPainting.of(photo, result.canopy().orElseThrow(), on));
    assertEquals(0, labels.unknownFraction());
    assertTrue(labels.at(10, 0).isEmpty(), "off the board nothing is painted");
    PointPx leaf = result.drawings().get(0).siteCentresPx().get(4);
    int x = (int) Math.round(leaf.xPx());
    int y = (int) Math.round(leaf.yPx());
    assertEquals(Tissue.GREEN, labels.at(x, y).orElseThrow());
    int green = 0;
    for (int i = 0; i < on.length; i++) {
      boolean leafHere =
          labels
              .at(i % photo.width(), Math.floorDiv(i, photo.width()))
              .filter(t -> t == Tissue.GREEN)
              .isPresent();
      green += leafHere ? 1 : 0;
    }
    // Radius 60 mm at 1.45 mm a pixel is 5,380 px; the rim, up to 2 px of 41, is left out.
    assertEquals(5380, green, 600);
  }
}
