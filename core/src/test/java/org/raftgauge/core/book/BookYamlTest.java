// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.pixels.PointPx;

/** Reading of book.yaml, layouts.yaml, crops.yaml and stations. */
class BookYamlTest {
  @TempDir Path folder;

  private BookFolder book() {
    return BookFolder.in(folder);
  }

  // ---- book.yaml

  @Test
  void settingsAreRead() {
    CropBook book = book().sound();
    assertEquals("Europe/Lisbon", book.zone().getId());
    assertEquals(LocalTime.of(4, 0), book.dayStartsAt());
    assertEquals(Optional.of("bench"), book.defaultStation());
    assertEquals("{date}_{raft}", book.photoNamePattern().orElseThrow().text());
    assertEquals(Units.METRIC, book.units());
  }

  @Test
  void settingsHaveDefaults() {
    CropBook book = book().with("book.yaml", "time_zone: Europe/Lisbon\n").sound();
    assertEquals(LocalTime.of(4, 0), book.dayStartsAt());
    assertEquals(Optional.empty(), book.defaultStation());
    assertEquals(Optional.empty(), book.photoNamePattern());
    assertEquals(Units.METRIC, book.units());
  }

  @Test
  void timeWithoutQuotesIsNotTakenForANumber() {
    // YAML 1.1 reads 12:30 as 750 in base 60; the text counts here.
    CropBook book =
        book().with("book.yaml", "time_zone: Europe/Lisbon\nday_starts_at: 12:30\n").sound();
    assertEquals(LocalTime.of(12, 30), book.dayStartsAt());
  }

  @Test
  void everyFaultOfTheSettingsIsNamedWithItsPlace() {
    assertEquals(
        List.of(
            "book.yaml:1:12: time_zone: the time zone \"Europe/Lisbn\" is unknown; did you mean"
                + " \"Europe/Lisbon\"? as in Europe/Lisbon",
            "book.yaml:2:16: day_starts_at: \"4 am\" is not a time; write hour:minute, as in"
                + " \"04:00\"",
            "book.yaml:4:13: photo_name: the field \"rft\" is unknown; did you mean \"raft\"?"
                + " known: date, time, raft, station, slot, any",
            "book.yaml:5:8: units: \"metrical\" is unknown; did you mean \"metric\"? known: metric,"
                + " imperial",
            "book.yaml:6:1: day_start_at: the key \"day_start_at\" is unknown; known: format",
            "book.yaml:3:10: station: the station \"bnch\" is unknown; did you mean \"bench\"?"
                + " known: bench, over-pond"),
        book()
            .with(
                "book.yaml",
                """
                time_zone: Europe/Lisbn
                day_starts_at: "4 am"
                station: bnch
                photo_name: "{date}_{rft}"
                units: metrical
                day_start_at: "04:00"
                """)
            .problems());
  }

  @Test
  void missingTimeZoneIsNamedAndTheRestIsRead() {
    BookReading reading = book().with("book.yaml", "units: imperial\n").read();
    assertEquals(
        "book.yaml:1:1: the key time_zone is missing; add time_zone: ...",
        reading.problems().get(0).toString());
    assertEquals(Units.IMPERIAL, reading.book().units());
    assertEquals(3, reading.book().plantings().size());
    assertTrue(reading.hasErrors());
  }

  @Test
  void bookOfANewerFormatIsNotGuessedAt() {
    BookReading reading =
        book().change("book.yaml", "station: bench", "format: 2\nstatoin: bench").read();
    assertEquals(
        List.of(
            "book.yaml:3:9: format: the book is written in format 2, newer than this program;"
                + " install a newer Raftgauge; this one reads format 1"),
        reading.problems().stream().map(Object::toString).toList());
    assertEquals(List.of(), reading.book().plantings());
  }

  @Test
  void formatOneIsTheFormatReadHere() {
    book().change("book.yaml", "station: bench", "format: 1\nstation: bench").sound();
  }

  @Test
  void brokenYamlIsNamedWithLineAndColumn() {
    List<String> problems =
        book().with("book.yaml", "time_zone: [Europe\nunits: metric\n").problems();
    assertEquals(
        "book.yaml:2:6: the YAML cannot be read (expected ',' or ']', but got :); mend the"
            + " indentation, quotes or brackets at or just before this place",
        problems.get(0));
  }

  @Test
  void oddFilesAreNamed() {
    assertEquals(
        "book.yaml: the file is empty; write it as lines of key: value",
        book().with("book.yaml", "# nothing yet\n").problems().get(0));
    assertEquals(
        "book.yaml: the file is not a map; write it as lines of key: value",
        book().with("book.yaml", "- a\n- b\n").problems().get(0));
    assertEquals(
        "book.yaml: there is no such file; make it, or look for it elsewhere",
        book().without("book.yaml").problems().get(0));
  }

  @Test
  void yamlCannotBuildObjectsNorBlowUp() {
    assertEquals(
        "book.yaml:1:12: the YAML cannot be read (Global tag is not allowed:"
            + " tag:yaml.org,2002:javax.script.ScriptEngineManager); mend the indentation, quotes or"
            + " brackets at or just before this place",
        book()
            .with("book.yaml", "time_zone: !!javax.script.ScriptEngineManager {a: b}\n")
            .problems()
            .get(0));
    StringBuilder bomb = new StringBuilder("a0: &a0 [x]\n");
    for (int i = 1; i < 60; i++) {
      bomb.append("a%d: &a%d [*a%d,*a%d,*a%d]\n".formatted(i, i, i - 1, i - 1, i - 1));
    }
    String first = book().with("book.yaml", bomb.toString()).problems().get(0);
    assertTrue(first.startsWith("book.yaml: the YAML cannot be read (Number of aliases"), first);
  }

  // ---- layouts.yaml

  @Test
  void layoutIsRead() {
    CropBook book =
        book()
            .change(
                "layouts.yaml",
                "  strip:",
                """
                marked:
                  board: {width_mm: 600, length_mm: 1200}
                  sites: {rows: 6, columns: 3, first_x_mm: 120, first_y_mm: 150, pitch_x_mm: 170, pitch_y_mm: 180, stagger_x_mm: 10}
                  markers: {family: tag36h11, side_mm: 36, centres_mm: [[30, 30], [570, 30], [570, 1170], [30, 1170]]}
                  tag: {x_mm: 300, y_mm: 42, side_mm: 60}
                  orientation_mark: {x_mm: 20, y_mm: 600, diameter_mm: 15, look: coloured}
                strip:\
                """
                    .indent(2)
                    .stripTrailing())
            .sound();
    assertEquals(
        Optional.of(
            new Layout(
                "marked",
                Optional.empty(),
                new Board(600, 1200),
                new SiteGrid(6, 3, 120, 150, 170, 180, 10),
                Optional.of(
                    new CornerMarkers(
                        36,
                        List.of(
                            new PointMm(30, 30),
                            new PointMm(570, 30),
                            new PointMm(570, 1170),
                            new PointMm(30, 1170)))),
                Optional.of(new TagPlace(300, 42, 60)),
                Optional.of(new OrientationMark(20, 600, 15, OrientationMark.Look.COLOURED)))),
        book.layout("marked", LocalDate.of(2026, 4, 6)));
  }

  @Test
  void versionInForceIsTheLastThatHasBegun() {
    CropBook book =
        book()
            .with(
                "layouts.yaml",
                """
                layouts:
                  strip:
                    board: {width_mm: 800, length_mm: 200}
                    sites: {rows: 1, columns: 4, first_x_mm: 100, first_y_mm: 100, pitch_x_mm: 200, pitch_y_mm: 100}
                  small:
                    - from: 2026-05-01
                      board: {width_mm: 400, length_mm: 300}
                      sites: {rows: 1, columns: 2, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
                    - board: {width_mm: 400, length_mm: 300}
                      sites: {rows: 2, columns: 3, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
                """)
            .sound();
    assertEquals(2, book.layout("small", LocalDate.of(2026, 4, 30)).orElseThrow().grid().rows());
    assertEquals(1, book.layout("small", LocalDate.of(2026, 5, 1)).orElseThrow().grid().rows());
    assertEquals(Optional.empty(), book.layout("other", LocalDate.of(2026, 5, 1)));
  }

  @Test
  void versionsOfOneDayAreNamed() {
    String version =
        """
            - from: 2026-05-01
              board: {width_mm: 400, length_mm: 300}
              sites: {rows: 1, columns: 2, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
        """;
    assertEquals(
        "layouts.yaml:3:5: layouts.twice: two versions hold from 2026-05-01; give each version its"
            + " own from",
        book().with("layouts.yaml", "layouts:\n  twice:\n" + version + version).problems().get(0));
  }

  @Test
  void layoutWithNothingInForceYetHasNoVersion() {
    CropBook book =
        book()
            .change(
                "layouts.yaml",
                "  strip:",
                """
                later:
                  - from: 2026-05-01
                    board: {width_mm: 400, length_mm: 300}
                    sites: {rows: 1, columns: 2, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
                strip:\
                """
                    .indent(2)
                    .stripTrailing())
            .sound();
    assertEquals(Optional.empty(), book.layout("later", LocalDate.of(2026, 4, 30)));
  }

  @Test
  void everyFaultOfALayoutIsNamedWithItsPlace() {
    assertEquals(
        List.of(
            "layouts.yaml:3:23: layouts.bad.board.width_mm: \"12,5\" is not a number; write a dot,"
                + " as in 12.5",
            "layouts.yaml:3:31: layouts.bad.board.lenght_mm: the key \"lenght_mm\" is unknown; did"
                + " you mean \"length_mm\"? known: length_mm",
            "layouts.yaml:4:19: layouts.bad.sites.rows: \"2.5\" is not a whole number; write a"
                + " whole number from 1 to 200",
            "layouts.yaml:4:33: layouts.bad.sites.columns: \"0\" is out of range; write a number"
                + " from 1 to 200",
            "layouts.yaml:4:93: layouts.bad.sites.pitch_y_mm: \"-1\" is out of range; write a"
                + " number above 0, at most 20000"),
        book()
            .change(
                "layouts.yaml",
                "layouts:\n",
                """
                layouts:
                  bad:
                    board: {width_mm: "12,5", lenght_mm: 3}
                    sites: {rows: 2.5, columns: 0, first_x_mm: 1, first_y_mm: 1, pitch_x_mm: 1, pitch_y_mm: -1}
                """)
            .problems()
            .stream()
            .filter(p -> !p.contains("is missing"))
            .toList());
  }

  @Test
  void partsOffTheBoardAreNamed() {
    String file =
        """
        layouts:
          bad:
            board: {width_mm: 400, length_mm: 300}
            sites: {rows: 3, columns: 3, first_x_mm: 80, first_y_mm: 80, pitch_x_mm: 120, pitch_y_mm: 140}
            markers: {side_mm: 30, centres_mm: [[30, 30], [370, 30], [370, 370], [30, 270]]}
            tag: {x_mm: -5, y_mm: 42, side_mm: 60}
            orientation_mark: {x_mm: 20, y_mm: 300.5, diameter_mm: 15, look: dark}
        """;
    assertEquals(
        List.of(
            "layouts.yaml:4:12: layouts.bad.sites: site C1 at 80, 360 mm is off the board of 400 x"
                + " 300 mm; mend the first site, the pitches, the numbers of rows and columns, or"
                + " the board",
            "layouts.yaml:5:14: layouts.bad.markers: marker 2 at 370, 370 mm is off the board of"
                + " 400 x 300 mm; measure in mm from the board's corner nearest A1",
            "layouts.yaml:6:10: layouts.bad.tag: the tag at -5, 42 mm is off the board of 400 x 300"
                + " mm; measure in mm from the board's corner nearest A1",
            "layouts.yaml:7:23: layouts.bad.orientation_mark: the mark at 20, 300.5 mm is off the"
                + " board of 400 x 300 mm; measure in mm from the board's corner nearest A1"),
        book().with("layouts.yaml", file).problems().subList(0, 4));
  }

  @Test
  void markersInTheWrongOrderAreNamed() {
    List<String> problems =
        book()
            .change(
                "layouts.yaml",
                "  strip:\n",
                "  strip:\n    markers: {family: tag16h5, side_mm: 20, centres_mm: [[30, 30], [30, 170],"
                    + " [770, 170], [770, 30]]}\n")
            .problems();
    assertEquals(
        List.of(
            "layouts.yaml:6:23: layouts.strip.markers.family: the marker family \"tag16h5\" is"
                + " unknown; known: tag36h11",
            "layouts.yaml:6:57: layouts.strip.markers.centres_mm: the centres do not go clockwise;"
                + " begin at the corner nearest A1 and go clockwise, as seen from above"),
        problems);
  }

  @Test
  void keyThatStandsTwiceIsNamed() {
    assertEquals(
        List.of(
            "layouts.yaml:5:3: layouts.small: the key stands twice, first on line 2; keep one of"
                + " the two"),
        book().change("layouts.yaml", "  strip:", "  small:").problems().subList(0, 1));
  }

  // ---- crops.yaml

  @Test
  void cropIsReadWithDefaults() {
    CropBook book = book().sound();
    // The defaults of the design: mean_to_top 0.5, limits 0.78, 1.35 and 0.35.
    assertEquals(
        new Crop(
            "basil",
            "green-leaf",
            new HeightModel(5.2, 0.5, 0.5),
            OptionalDouble.empty(),
            new Crop.Limits(0.78, 1.35, 0.35)),
        book.crops().get("basil"));
  }

  @Test
  void varietyTakesFromItsCropWhatItDoesNotSay() {
    CropBook book =
        book()
            .with(
                "crops.yaml",
                """
                crops:
                  basil: {colour_model: green-leaf, height_model: {scale_mm: 5, exponent: 0.5}}
                  lettuce:
                    colour_model: green-leaf
                    height_model: {scale_mm: 2, exponent: 0.5}
                    emerged_by_das: 7
                    limits: {lagging_share: 0.7}
                    harvest: {head_weight_g: 150, minimum_g: 120, ready_share: 0.9, window_dat: [28, 38], trim_share: 0.05, pack_g: 150}
                    varieties:
                      red oak: {colour_model: red-leaf, limits: {ahead_share: 1.5}}
                """)
            .plantings("R3,P1,3,lettuce,red oak,strip,,,2026-04-06,,,\n")
            .sound();
    assertEquals(Set.of("basil", "lettuce", "lettuce/red oak"), book.crops().keySet());
    Crop red = book.crop(book.plantings().get(3)).orElseThrow();
    assertEquals("red-leaf", red.colourModel());
    assertEquals(new HeightModel(2, 0.5, 0.5), red.heightModel());
    assertEquals(OptionalDouble.of(7), red.emergedByDas());
    assertEquals(new Crop.Limits(0.7, 1.5, 0.35), red.limits());
    assertEquals(
        Optional.of(new Harvest(150, 120, 0.9, 28, 38, 0.05, OptionalDouble.of(150))),
        red.harvest());
    // A variety that the book does not describe is grown as its crop.
    assertEquals("green-leaf", book.crop(book.plantings().get(1)).orElseThrow().colourModel());
  }

  @Test
  void badCropStopsOnlyWhatIsPlantedWithIt() {
    BookReading reading = book().change("crops.yaml", "green-leaf", "green-leave").read();
    assertEquals(
        List.of(
            "crops.yaml:3:19: crops.basil.colour_model: the colour model \"green-leave\" is"
                + " unknown; did you mean \"green-leaf\"? known: green-leaf, red-leaf"),
        reading.problems().stream().map(Object::toString).toList());
    CropBook book = reading.book();
    assertEquals(Set.of("lettuce"), book.crops().keySet());
    assertEquals(3, book.plantings().size());
    assertEquals(Optional.empty(), book.crop(book.plantings().get(0)));
    assertTrue(book.crop(book.plantings().get(1)).isPresent());
    assertEquals(reading.problems().get(0), book.whyBroken("crop", "basil").orElseThrow());
    assertEquals(Optional.empty(), book.whyBroken("crop", "lettuce"));
  }

  @Test
  void badVarietyStopsOnlyTheVariety() {
    BookReading reading =
        book()
            .with(
                "crops.yaml",
                """
                crops:
                  basil: {colour_model: green-leaf, height_model: {scale_mm: 5, exponent: 0.5}}
                  lettuce:
                    colour_model: green-leaf
                    height_model: {scale_mm: 2, exponent: 0.5}
                    varieties: {oak: {emerged_by_das: x}}
                """)
            .plantings("R3,P1,3,lettuce,oak,strip,,,2026-04-06,,,\n")
            .read();
    assertEquals(
        List.of(
            "crops.yaml:6:39: crops.lettuce.varieties.oak.emerged_by_das: \"x\" is not a number;"
                + " write a number from 0 to 400"),
        reading.problems().stream().map(Object::toString).toList());
    CropBook book = reading.book();
    assertTrue(book.crop(book.plantings().get(1)).isPresent());
    assertEquals(Optional.empty(), book.crop(book.plantings().get(3)));
  }

  @Test
  void everyFaultOfACropIsNamedWithItsPlace() {
    assertEquals(
        List.of(
            "crops.yaml:3:5: crops.basil: the key colour_model is missing; add colour_model: ...",
            "crops.yaml:3:45: crops.basil.height_model.exponent: \"2.5\" is out of range; write a"
                + " number from 0 to 2",
            "crops.yaml:4:29: crops.basil.limits.lagging_share: \"78\" is out of range; write a"
                + " number from 0 to 1",
            "crops.yaml:5:30: crops.basil.harvest.head_weight_g: \"heavy\" is not a number; write a"
                + " number above 0, at most 20000",
            "crops.yaml:5:49: crops.basil.harvest.window_dat: the list has 1 values; write 2"
                + " numbers",
            "crops.yaml:6:5: crops.basil.colour: the key \"colour\" is unknown; did you mean"
                + " \"colour_model\"? known: varieties, colour_model, emerged_by_das"),
        book()
            .with(
                "crops.yaml",
                """
                crops:
                  basil:
                    height_model: {scale_mm: 5.2, exponent: 2.5}
                    limits: {lagging_share: 78}
                    harvest: {head_weight_g: heavy, window_dat: [28]}
                    colour: green-leaf
                  lettuce: {colour_model: green-leaf, height_model: {scale_mm: 2, exponent: 0.5}}
                """)
            .problems());
  }

  @Test
  void harvestThatContradictsItselfIsNamed() {
    assertEquals(
        List.of(
            "crops.yaml:5:46: crops.basil.harvest.minimum_g: the minimum is over head_weight_g;"
                + " write less",
            "crops.yaml:5:63: crops.basil.harvest.window_dat: the window ends before it begins;"
                + " swap the two days"),
        book()
            .change(
                "crops.yaml",
                "exponent: 0.5}\n  lettuce",
                "exponent: 0.5}\n    harvest: {head_weight_g: 150, minimum_g: 200, window_dat: [38,"
                    + " 28]}\n  lettuce")
            .problems());
  }

  // ---- stations

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

  @Test
  void problemsOfAllFilesAreFoundAtOnce() {
    List<String> problems =
        book()
            .change("book.yaml", "station: bench", "statoin: bench")
            .change("layouts.yaml", "rows: 2", "rows: two")
            .change("crops.yaml", "exponent: 0.5}", "exponent: x}")
            .change("stations/bench.yaml", "1600", "-1600")
            .plantings("R9,P1,1,kale,,smal,,2026-03-20,2026-04-06,,,L1\n")
            .events("2026-05-01,died,R2,A9,,,,,\n")
            .problems();
    for (String file :
        List.of(
            "book.yaml",
            "layouts.yaml",
            "crops.yaml",
            "stations/bench.yaml",
            "plantings.csv",
            "events.csv")) {
      assertTrue(problems.stream().anyMatch(p -> p.startsWith(file)), file + " in " + problems);
    }
  }
}
