// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationSign;

/** Cases whose scores can be counted by hand: 15 even evenings, then a height that is off. */
class ScoreFaultsTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 1, 1);
  private static final int ONSET = 15;

  /** A photo of one raft, two sites of an area each; held where there is none. */
  private static PhotoMeasure photo(OptionalDouble areaCm2) {
    List<SiteMeasure> sites = new ArrayList<>();
    for (String site : List.of("A1", "A2")) {
      sites.add(
          new SiteMeasure(
              SiteId.parse(site),
              areaCm2,
              areaCm2,
              areaCm2,
              false,
              0,
              20,
              0.95,
              List.of(),
              List.of(),
              1,
              areaCm2.isPresent() ? "" : "held"));
    }
    RaftMeasure raft =
        new RaftMeasure(
            Optional.of("R1"),
            "",
            "deck-2",
            PoseSource.SLOT,
            0.4,
            1,
            1600,
            true,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            sites,
            1,
            "");
    return new PhotoMeasure(
        "a.jpg",
        "",
        "pond",
        Optional.empty(),
        "",
        PhotoStatus.USED,
        "",
        "",
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(raft));
  }

  /** A case whose height steps by so much from the onset on, or an evening later. */
  private static ScoreFaults.Case with(double stepMm, int later, List<PhotoMeasure> photos) {
    List<StationEvening> evenings = new ArrayList<>();
    for (int i = 0; i < ONSET + photos.size(); i++) {
      double height = 2000 + i % 3 + (i >= ONSET + later ? stepMm : 0);
      evenings.add(
          new StationEvening(FIRST.plusDays(i), Map.of(StationSign.HEIGHT, height), List.of()));
    }
    List<PhotoMeasure> without = photos.stream().map(p -> photo(OptionalDouble.of(400))).toList();
    return new ScoreFaults.Case(evenings, ONSET, photos, without);
  }

  private static List<PhotoMeasure> twice(double areaCm2) {
    return List.of(photo(OptionalDouble.of(areaCm2)), photo(OptionalDouble.of(areaCm2)));
  }

  @Test
  void delaysCountFromTheFirstPhotoWithTheFault() {
    ScoreFaults.Score score =
        ScoreFaults.ofCases(
            Fault.WATER,
            List.of(with(60, 0, twice(400)), with(60, 1, twice(400)), with(0, 0, twice(400))));
    assertEquals(3, score.cases());
    assertEquals(List.of(1, 2), score.delays());
    // Said on both photos of the first case and on the second of the second.
    assertEquals(Map.of("height", 3), score.signs());
    assertEquals(6, score.photos());
    assertEquals(0, score.held(), "60 mm are measured on");
  }

  @Test
  void photosAreHeldByTheCheckOrByTheirOwnMeasure() {
    // 200 of 2000 mm are over a twentieth: no water explains that.
    assertEquals(2, ScoreFaults.ofCases(Fault.LENS, List.of(with(200, 0, twice(400)))).held());
    List<PhotoMeasure> unmeasured =
        List.of(photo(OptionalDouble.empty()), photo(OptionalDouble.of(400)));
    assertEquals(1, ScoreFaults.ofCases(Fault.KNOCK_40, List.of(with(0, 0, unmeasured))).held());
  }

  @Test
  void areaOffIsThatOfTheSitesMeasuredOnBothPhotosOverTheSameEveningWithoutTheFault() {
    ScoreFaults.Score score = ScoreFaults.ofCases(Fault.FOG, List.of(with(0, 0, twice(390))));
    // 2 x 390 over 2 x 400, less 1.
    assertEquals(2, score.offFractions().size());
    score.offFractions().forEach(off -> assertEquals(-0.025, off, 1e-12));
  }
}
