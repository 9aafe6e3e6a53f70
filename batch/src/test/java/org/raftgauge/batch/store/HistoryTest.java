// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMade;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.LightField;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoWitness;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.CameraShift;
import org.raftgauge.core.plane.EdgeBlur;
import org.raftgauge.core.relief.HeightSource;
import org.raftgauge.core.site.Border;
import org.raftgauge.core.site.BorderTakes;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.station.StationSign;

class HistoryTest {
  @TempDir private Path folder;

  @Test
  void aPhotoComesBackAsItWasSaved() throws IOException {
    PhotoMeasure photo = photo("rafts=R1;? area=12.3456789 at=2026-04-11T18:00:00+01:00");
    RaftMeasure raft = photo.rafts().get(0);
    PhotoMeasure mixed =
        HandMade.withRaft(
            photo,
            raft.withSites(
                List.of(
                    HandMade.closed(raft.sites().get(0)),
                    HandMade.held(raft.sites().get(1), "unsure"),
                    raft.sites().get(2))));

    try (History history = open()) {
      history.save(List.of(kept(mixed)));
      assertEquals(Optional.of(kept(mixed)), history.find(mixed.sha256()));
    }
    try (History history = open()) {
      assertEquals(Optional.of(kept(mixed)), history.find(mixed.sha256()), "and after reopening");
      history.save(List.of(kept(photo)));
      assertEquals(Optional.of(kept(photo)), history.find(photo.sha256()), "the later save holds");
      assertEquals(List.of(kept(photo)), history.measures().findRaft("R1"));
      assertEquals(List.of(), history.measures().findRaft("R2"));
      assertEquals(Optional.empty(), history.find("00"));
    }
  }

  @Test
  void whatAPhotoSaysOfItsStationComesBackAsItWas() throws IOException {
    PhotoMeasure photo = photo("rafts=R1 at=2026-04-11T18:00:00+01:00");
    PhotoWitness witness =
        new PhotoWitness(
            Optional.of(new CameraShift(-1.25, 3.5, 0.0625)),
            new EdgeBlur(
                OptionalDouble.of(0.75), List.of(OptionalDouble.of(0.5), OptionalDouble.empty())),
            OptionalDouble.of(0.0125),
            Optional.of(new LightField(0.625, -0.125, 0.25, 0.0625)),
            OptionalDouble.of(-0.375));
    PhotoMeasure told =
        new PhotoMeasure(
            photo.photo(),
            photo.sha256(),
            photo.station(),
            photo.takenAt(),
            photo.clockDoubt(),
            photo.status(),
            photo.reason(),
            photo.remedy(),
            photo.sharpness(),
            photo.exposureClippedFraction(),
            photo.lightCast(),
            photo.rafts(),
            witness);
    try (History history = open()) {
      history.save(List.of(kept(told)));
      assertEquals(Optional.of(kept(told)), history.find(photo.sha256()));
      StationPast.Photo past = history.measures().stationPast("bench").get(0);
      assertEquals(0.75, past.values().get(StationSign.EDGE_BLUR));
      assertEquals(-1.25, past.values().get(StationSign.SHIFT_RIGHT));
      assertEquals(0.0625, past.values().get(StationSign.VIGNETTING));
      assertEquals(1600.0, past.values().get(StationSign.HEIGHT));
      assertEquals(witness.blur().cells(), past.blurCells());
    }
  }

  @Test
  void aSaveIsAllOrNothing() throws IOException {
    PhotoMeasure good = photo("rafts=R1 at=2026-04-11T18:00:00+01:00");
    PhotoMeasure other = photo("rafts=R2 at=2026-04-11T18:00:00+01:00");
    RaftMeasure raft = other.rafts().get(0);
    PhotoMeasure twice =
        HandMade.withRaft(other, raft.withSites(List.of(raft.sites().get(0), raft.sites().get(0))));

    try (History history = open()) {
      IOException e =
          assertThrows(IOException.class, () -> history.save(List.of(kept(good), kept(twice))));

      assertTrue(e.getMessage().startsWith(folder.resolve("history.db") + ": "), e.getMessage());
      assertEquals(Optional.empty(), history.find(good.sha256()));
      history.save(List.of(kept(good)));
      assertEquals(Optional.of(kept(good)), history.find(good.sha256()));
    }
  }

  @Test
  void settlingMarksPhotosAndRaftsAndLosesNothing() throws Exception {
    PhotoMeasure photo = photo("rafts=R1 at=2026-04-11T18:00:00+01:00");
    Settled settled =
        new Settled(photo, List.of(new Settled.Outcome(Settled.Kind.REPLACED, "b.jpg is better")));
    RunRecord run =
        new RunRecord(
            "run-1",
            OffsetDateTime.parse("2026-04-12T07:00:00+01:00"),
            "0.1",
            1,
            List.of(photo.sha256()));

    try (History history = open()) {
      history.save(List.of(kept(photo)));
      assertEquals(Optional.empty(), history.folderOf("run-1"));
      history.settle(List.of(settled), run, folder.resolve("out"));
      assertEquals(Optional.empty(), history.folderOf("run-1"), "not published yet");
      history.published("run-1");

      assertEquals(Optional.of(folder.resolve("out")), history.folderOf("run-1"));
      Kept back = history.find(photo.sha256()).orElseThrow();
      assertEquals(photo, back.measure());
      assertEquals(Optional.of("run-1"), back.picturedRun());
    }
    assertEquals(
        List.of("replaced", "b.jpg is better"), query("SELECT settled, settled_why FROM rafts"));
  }

  @Test
  void aHistoryOfANewerProgramIsLeftAlone() throws Exception {
    open().close();
    execute("PRAGMA user_version = 99");

    IOException e = assertThrows(IOException.class, this::open);

    assertEquals(
        folder.resolve("history.db")
            + ": it was written by a newer Raftgauge (version 99 of the file, this one knows 6);"
            + " use the newer program",
        e.getMessage());
  }

  @Test
  void aFileThatIsNoHistoryIsNamed() throws IOException {
    Files.writeString(folder.resolve("history.db"), "raft,pond\n".repeat(200));

    IOException e = assertThrows(IOException.class, this::open);

    assertTrue(e.getMessage().startsWith(folder.resolve("history.db") + ": "), e.getMessage());
    assertTrue(e.getMessage().contains("not a database"), e.getMessage());
  }

  @Test
  void theTablesSpeakForThemselves() throws Exception {
    try (History history = open()) {
      history.save(List.of(kept(photo("rafts=R1 area=10 at=2026-04-11T18:00:00+01:00"))));
    }

    assertEquals(
        List.of("R1", "A2", "20.0"),
        query(
            "SELECT raft, site, projected_area_cm2 FROM photos JOIN rafts USING (sha256)"
                + " JOIN sites USING (sha256, place) WHERE status = 'used' AND site = 'A2'"));
  }

  @Test
  void aFreedBookCanBeTakenAgain() throws IOException {
    BookLock.take(folder, Duration.ZERO, who -> {}).close();
    List<String> waited = new ArrayList<>();

    BookLock.take(folder, Duration.ZERO, waited::add).close();

    assertEquals(List.of(), waited);
  }

  @Test
  void aHeightThatASecondCameraSawComesBack() throws IOException {
    PhotoMeasure plain = photo("rafts=R1");
    SiteMeasure site = plain.rafts().get(0).sites().get(0);
    SiteMeasure seen =
        new SiteMeasure(
            site.site(),
            site.projectedAreaCm2(),
            site.projectedAreaSeCm2(),
            site.visibleAreaCm2(),
            site.closed(),
            site.sharedOutlineFraction(),
            61.5,
            site.parallaxFactor(),
            site.shape(),
            site.colour(),
            site.quality(),
            site.held(),
            List.of(new SiteMeasure.Relief(HeightSource.STEREO, 88.5, 1234.5, 0.93)),
            0);
    List<SiteMeasure> sites = new ArrayList<>(plain.rafts().get(0).sites());
    sites.set(0, seen);
    RaftMeasure raft = plain.rafts().get(0);
    RaftMeasure withRelief =
        new RaftMeasure(
            raft.raft(),
            raft.slot(),
            raft.layout(),
            raft.poseSource(),
            raft.poseErrorMm(),
            raft.mmPerPx(),
            raft.cameraHeightMm(),
            raft.halfTurnKnown(),
            raft.canopyCover(),
            raft.leftoverCanopyCm2(),
            sites,
            raft.quality(),
            raft.held(),
            raft.rulerSites(),
            raft.notes(),
            List.of(
                new Border(
                    new SiteId(0, 0),
                    new SiteId(1, 0),
                    -0.1234,
                    BorderTakes.ofCm2(0.5, 1.0, 1.25, 1.25, 12.0),
                    BorderTakes.ofCm2(0.0, 0.0, 0.01, 0.02, 0.03))));
    PhotoMeasure measure = with(plain, List.of(withRelief));

    try (History history = open()) {
      history.save(List.of(kept(measure)));
      assertEquals(measure, history.find(measure.sha256()).orElseThrow().measure());
    }
  }

  private static PhotoMeasure with(PhotoMeasure photo, List<RaftMeasure> rafts) {
    return new PhotoMeasure(
        photo.photo(),
        photo.sha256(),
        photo.station(),
        photo.takenAt(),
        photo.clockDoubt(),
        photo.status(),
        photo.reason(),
        photo.remedy(),
        photo.sharpness(),
        photo.exposureClippedFraction(),
        photo.lightCast(),
        rafts,
        photo.witness());
  }

  private History open() throws IOException {
    return History.open(folder.resolve("history.db"));
  }

  private static Kept kept(PhotoMeasure photo) {
    return Kept.fresh(photo, new Origin("settings", "run-0", "0.1", "c0de"));
  }

  private static PhotoMeasure photo(String text) {
    return new HandMadeMeasurer("s")
        .measure(text.getBytes(StandardCharsets.UTF_8), PhotoFacts.of("a.jpg"))
        .measure();
  }

  private List<String> query(String sql) throws SQLException {
    List<String> cells = new ArrayList<>();
    try (var database = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("history.db"));
        var statement = database.createStatement();
        var row = statement.executeQuery(sql)) {
      while (row.next()) {
        for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
          cells.add(row.getString(i));
        }
      }
    }
    return cells;
  }

  private void execute(String sql) throws SQLException {
    try (var database = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("history.db"));
        var statement = database.createStatement()) {
      statement.execute(sql);
    }
  }
}
