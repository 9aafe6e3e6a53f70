// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.store.History;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationSign;

class StationCheckTest {
  private static final FarmDay DAY = new FarmDay(ZoneId.of("Europe/Lisbon"), LocalTime.of(4, 0));
  private static final Station STATION =
      new Station(
          "bench",
          Station.Kind.PASSING,
          1,
          640,
          480,
          new Lens(700, 700, 320, 240, -0.1, 0, 0, 0, 0),
          1500,
          List.of(),
          Duration.ZERO);

  @TempDir private Path folder;

  private Path file;
  private int photos;

  @BeforeEach
  void makeHistory() throws IOException {
    file = folder.resolve("history.db");
    History.open(file).close();
  }

  private void photo(String at, double sharpness, double heightMm, String poseSource)
      throws SQLException {
    String sha = "sha" + photos++;
    try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
        PreparedStatement photo =
            database.prepareStatement(
                "INSERT INTO photos (sha256, photo, settings, run, station, taken_at, clock_doubt,"
                    + " status, reason, remedy, measured_status, measured_reason,"
                    + " measured_remedy, sharpness, exposure_clipped_fraction, light_cast)"
                    + " VALUES (?, 'p', '', '', 'bench', ?, '', 'used', '', '',"
                    + " 'used', '', '', ?, 0.001, 0.02)");
        PreparedStatement raft =
            database.prepareStatement(
                "INSERT INTO rafts (sha256, place, raft, slot, layout, pose_source, pose_error_mm,"
                    + " mm_per_px, camera_height_mm, half_turn_known, quality, held)"
                    + " VALUES (?, 0, 'R1', '', 'l', ?, 0.8, 1, ?, 1, 1, '')")) {
      photo.setString(1, sha);
      photo.setString(2, at);
      photo.setDouble(3, sharpness);
      photo.executeUpdate();
      raft.setString(1, sha);
      raft.setString(2, poseSource);
      raft.setDouble(3, heightMm);
      raft.executeUpdate();
    }
  }

  private List<StationEvening> evenings(LocalDate from) throws IOException {
    try (History history = History.open(file)) {
      return StationEvenings.of(history.measures().stationPast("bench"), DAY, from);
    }
  }

  @Test
  void photosAfterMidnightBelongToTheEveningBeforeAndMediansCount()
      throws SQLException, IOException {
    photo("2026-04-01T20:00:00+01:00", 0.5, 1500, "markers");
    photo("2026-04-01T21:00:00+01:00", 0.9, 1510, "markers");
    photo("2026-04-02T00:20:00+01:00", 0.6, 1502, "markers");
    List<StationEvening> evenings = evenings(LocalDate.MIN);
    assertEquals(1, evenings.size());
    assertEquals(LocalDate.of(2026, 4, 1), evenings.get(0).evening());
    assertEquals(0.6, evenings.get(0).values().get(StationSign.SHARPNESS));
    assertEquals(1502.0, evenings.get(0).values().get(StationSign.HEIGHT));
  }

  @Test
  void heightThatNothingInThePhotoToldIsLeftOut() throws SQLException, IOException {
    photo("2026-04-01T20:00:00+01:00", 0.5, 1500, "station");
    assertFalse(evenings(LocalDate.MIN).get(0).values().containsKey(StationSign.HEIGHT));
  }

  @Test
  void lowerWaterIsSaidWithWhatToDo() throws SQLException, IOException {
    for (int day = 1; day <= 12; day++) {
      double height = 1500 + day % 3 + (day == 12 ? 40 : 0);
      photo(String.format("2026-04-%02dT20:00:00+01:00", day), 0.6, height, "markers");
    }
    assertEquals(
        List.of(
            "Station bench: 12 evenings, last 2026-04-12",
            "  since 2026-04-12 (1 evening): the boards look smaller: the water is lower or the"
                + " camera higher (height 1540 mm, usually 1501 mm); check water level, mount, zoom"
                + " and focus",
            "  its boards look as from 1540 mm above, 2.7 % more than camera_height_mm: 1500 of"
                + " stations/bench.yaml; measure the height again, and where it is right the board"
                + " and the marker sizes in layouts.yaml, then the lens"),
        StationCheckText.lines(STATION, evenings(LocalDate.MIN)));
  }

  @Test
  void lensThatWasNeverCalibratedTellsTheHeightNoBetterThanByThreePercent()
      throws SQLException, IOException {
    Station tape =
        new Station(
            STATION.name(),
            STATION.kind(),
            1,
            STATION.imageWidthPx(),
            STATION.imageHeightPx(),
            new Lens(700, 700, 320, 240, 0, 0, 0, 0, 0),
            1500,
            List.of(),
            Duration.ZERO);
    assertEquals(Optional.empty(), StationCheckText.height(tape, Optional.of(1526.0)));
    assertTrue(StationCheckText.height(tape, Optional.of(1550.0)).isPresent());
    assertTrue(StationCheckText.height(STATION, Optional.of(1526.0)).isPresent());
    assertEquals(Optional.empty(), StationCheckText.height(STATION, Optional.of(1510.0)));
    photo("2026-04-01T20:00:00+01:00", 0.6, 1526, "markers");
    assertEquals(
        "  its boards look as from 1526 mm above; camera_height_mm is 1500: 1.7 % apart, as a lens"
            + " that was never calibrated may be (raftgauge station lens); measure the height"
            + " again, if you can, and the marks in layouts.yaml",
        StationCheckText.lines(tape, evenings(LocalDate.MIN)).get(1));
  }

  @Test
  void stationAsItWasAndShortPastAreSaid() throws SQLException, IOException {
    for (int day = 1; day <= 12; day++) {
      photo(String.format("2026-04-%02dT20:00:00+01:00", day), 0.6, 1500 + day % 3, "markers");
    }
    assertEquals(
        "  as it was, by 5 signs", StationCheckText.lines(STATION, evenings(LocalDate.MIN)).get(2));
    assertEquals(
        List.of(
            "  its boards look as from 1500 mm above; camera_height_mm is 1500",
            "  too short a past to say whether anything changed: it takes nine evenings"),
        StationCheckText.lines(STATION, evenings(LocalDate.of(2026, 4, 9))).subList(1, 3));
    assertEquals(
        List.of("Station bench: no photos yet"), StationCheckText.lines(STATION, List.of()));
  }
}
