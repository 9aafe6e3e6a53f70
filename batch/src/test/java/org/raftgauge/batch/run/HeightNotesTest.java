// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;

/** Hand-made photos put the camera 1600 mm over the boards. */
class HeightNotesTest {
  private static final HandMadeMeasurer MEASURER = new HandMadeMeasurer("s");

  private static CropBook book(double cameraHeightMm) {
    Station bench =
        new Station(
            "bench",
            Station.Kind.PASSING,
            1,
            640,
            480,
            new Lens(700, 700, 320, 240, 0, 0, 0, 0, 0),
            cameraHeightMm,
            List.of(),
            Duration.ZERO);
    CropBook none = new HandMadeFarm("R1").book();
    return new CropBook(
        none.settings(),
        Map.of("bench", bench),
        none.layouts(),
        none.crops(),
        none.plantings(),
        none.diary(),
        none.tenures(),
        none.plants(),
        none.broken());
  }

  private static List<PhotoMeasure> photos(String... said) {
    return Stream.of(said)
        .map(
            text ->
                MEASURER
                    .measure(text.getBytes(StandardCharsets.UTF_8), PhotoFacts.of("a.jpg"))
                    .measure())
        .toList();
  }

  @Test
  void aStationFileThatSaysWhatItsPhotosShowIsNotMentioned() {
    assertEquals(List.of(), HeightNotes.of(photos("rafts=R1"), book(1600)));
    // 1 % of 1600 mm is 16 mm: within what boards, water and a tape measure differ by.
    assertEquals(List.of(), HeightNotes.of(photos("rafts=R1"), book(1610)));
  }

  @Test
  void anotherHeightThanThatOfTheFileIsSaidWithWhatToDo() {
    assertEquals(
        List.of(
            "station bench: its boards look as from 1600 mm above, 15.8 % less than"
                + " camera_height_mm: 1900 of stations/bench.yaml; measure the height again, and"
                + " where it is right the board and the marker sizes in layouts.yaml, then the"
                + " lens"),
        HeightNotes.of(photos("rafts=R1", "rafts=R2"), book(1900)));
  }

  @Test
  void boardsThatNothingSeenPlacedAndPhotosOfOtherStationsSayNothing() {
    assertEquals(
        List.of(),
        HeightNotes.of(
            photos("rafts=R1 pose=station", "rafts=R1 station=pond", "rafts=R1 status=held"),
            book(1900)));
  }

  @Test
  void aSecondCameraThatToldNoHeightsIsSaidOnceWithItsReason() {
    String note = "note=heights_are_from_the_crop's_model:_one_has_moved;_calibrate_the_pair_again";
    assertEquals(
        List.of(
            "station bench, 3 rafts: heights are from the crop's model: one has moved; calibrate"
                + " the pair again"),
        HeightNotes.of(photos("rafts=R1;R2 " + note, "rafts=R3 " + note, "rafts=R4"), book(1600)));
  }
}
