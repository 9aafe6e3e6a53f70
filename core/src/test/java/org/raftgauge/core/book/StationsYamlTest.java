// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.pixels.PointPx;

/** Reading of the stations. */
class StationsYamlTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  @Test
  void stationIsReadWithDefaults() {
    CropBook book = book().sound();
    // No principal point given: the picture's centre, (1200 - 1) / 2 and (2000 - 1) / 2.
    assertEquals(
        Optional.of(
            new Station(
                "bench",
                Station.Kind.PASSING,
                1,
                1200,
                2000,
                new Lens(2200, 2200, 599.5, 999.5, 0, 0, 0, 0, 0),
                1600,
                List.of(),
                Duration.ZERO)),
        book.station("bench"));
    Slot right = book.station("over-pond").orElseThrow().slots().get(1);
    assertEquals("right", right.name());
    assertEquals(Slot.Refine.NONE, right.refine());
    assertEquals(new PointPx(1100, 12), right.cornersPx().get(1));
    assertEquals(
        Slot.Refine.EDGES, book.station("over-pond").orElseThrow().slots().get(0).refine());
  }

  @Test
  void clockOffsetIsReadBothWays() {
    for (Map.Entry<String, Duration> offset :
        Map.of(
                "clock_offset: \"+00:03:20\"", Duration.ofSeconds(200),
                "clock_offset: -01:00", Duration.ofHours(-1),
                "clock_offset: \"8760:00:00\"", Duration.ofDays(365),
                "clock_offset_s: -12.5", Duration.ofMillis(-12_500))
            .entrySet()) {
      CropBook book =
          BookFolder.in(folder)
              .change("stations/bench.yaml", "kind:", offset.getKey() + "\nkind:")
              .sound();
      assertEquals(offset.getValue(), book.station("bench").orElseThrow().clockOffset());
    }
  }

  @Test
  void datesOfChangesAreReadInOrderAndChangeNoMeasure() {
    CropBook book =
        book()
            .change("stations/bench.yaml", "kind:", "changed_on: [2026-06-01, 2026-04-10]\nkind:")
            .sound();
    Station bench = book.station("bench").orElseThrow();
    assertEquals(List.of(LocalDate.of(2026, 4, 10), LocalDate.of(2026, 6, 1)), bench.changedOn());
    assertEquals(
        BookFolder.in(folder).sound().station("bench").orElseThrow(), bench.forMeasuring());
  }

  @Test
  void badStationStopsOnlyItself() {
    BookReading reading =
        book()
            .change("stations/over-pond.yaml", "kind: fixed", "kind: fxed\nclock_offset: 3")
            .read();
    assertEquals(
        List.of(
            "stations/over-pond.yaml:1:7: kind: \"fxed\" is unknown; did you mean \"fixed\"? known:"
                + " passing, fixed",
            "stations/over-pond.yaml:2:15: clock_offset: \"3\" is not a clock offset; write what to"
                + " add to the camera's clock as hours:minutes:seconds, as in \"+00:03:20\""),
        reading.problems().stream().map(Object::toString).toList());
    assertEquals(Set.of("bench"), reading.book().stations().keySet());
    assertTrue(reading.book().whyBroken("station", "over-pond").isPresent());
  }

  @Test
  void slotCornersMustGoClockwiseRoundAConvexShape() {
    String wrong =
        "the corners do not go clockwise round a board; begin at the corner nearest A1 and go"
            + " clockwise, as the photo shows it";
    for (String corners :
        List.of(
            "[[10, 10], [12, 702], [498, 700], [500, 12]]", // counter-clockwise
            "[[10, 10], [498, 700], [500, 12], [12, 702]]", // crossed
            "[[10, 10], [500, 12], [100, 50], [12, 702]]", // dented
            "[[10, 10], [10, 10], [498, 700], [12, 702]]")) { // one corner twice
      assertEquals(
          List.of("stations/over-pond.yaml:7:45: slots[0].corners_px: " + wrong),
          BookFolder.in(folder)
              .change(
                  "stations/over-pond.yaml",
                  "[[10, 10], [500, 12], [498, 700], [12, 702]]",
                  corners)
              .problems(),
          corners);
    }
  }

  @Test
  void boardMayLieAnyWayRoundInThePhoto() {
    BookFolder.in(folder)
        .change(
            "stations/over-pond.yaml",
            "[[10, 10], [500, 12], [498, 700], [12, 702]]",
            "[[498, 700], [12, 702], [10, 10], [500, 12]]")
        .sound();
  }

  @Test
  void everyFaultOfASlotIsNamed() {
    assertEquals(
        List.of(
            "stations/over-pond.yaml:7:24: slots[0].layout: the layout \"smal\" is unknown; did you"
                + " mean \"small\"? known: small, strip",
            "stations/over-pond.yaml:7:42: slots[0].corners_px: there are 3 corners; give four, as"
                + " [x, y] each",
            "stations/over-pond.yaml:9:5: slots[2]: the slot \"left\" stands twice; rename one of"
                + " them"),
        book()
            .with(
                "stations/over-pond.yaml",
                """
                kind: fixed
                image_width_px: 1200
                image_height_px: 2000
                lens: {fx_px: 2200}
                camera_height_mm: 2600
                slots:
                  - {name: up, layout: smal, corners_px: [[10, 10], [500, 12], [498, 700]]}
                  - {name: left, layout: small, corners_px: [[10, 10], [500, 12], [498, 700], [12, 702]]}
                  - {name: left, layout: small, corners_px: [[10, 10], [500, 12], [498, 700], [12, 702]]}
                """)
            .problems());
  }

  @Test
  void fixedStationNeedsSlotsAndAPassingOneHasNone() {
    assertEquals(
        List.of("stations/bench.yaml:1:1: the key slots is missing; add slots: ..."),
        book().change("stations/bench.yaml", "passing", "fixed").problems());
    assertEquals(
        List.of(
            "stations/over-pond.yaml:7:3: slots: a passing station has no slots; delete slots, or"
                + " write kind: fixed"),
        BookFolder.in(folder).change("stations/over-pond.yaml", "fixed", "passing").problems());
  }

  @Test
  void bookWithoutAStationIsNamed() {
    BookFolder folder = book().without("stations/bench.yaml").without("stations/over-pond.yaml");
    assertEquals(
        List.of(
            "stations: there is no station; write one, as in stations/photo-bench.yaml",
            "book.yaml:3:10: station: the station \"bench\" is unknown; none is known yet"),
        folder.problems());
  }

  @Test
  void fileOfAnotherEndingAmongTheStationsIsAWarning() {
    BookReading reading = book().with("stations/bench.yml", "kind: passing\n").read();
    assertEquals(
        List.of(
            "stations/bench.yml: the file is not read; give it the ending .yaml, or move it away"),
        reading.problems().stream().map(Object::toString).toList());
    assertFalse(reading.hasErrors());
  }
}
