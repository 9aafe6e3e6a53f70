// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.relief.HeightSource;
import org.raftgauge.core.site.SiteMeasure;

class TablesTest {

  /** The columns that the design promises to other programs, its appendix B. */
  @Test
  void promisedColumnsComeFirstAndInOrder() {
    assertTrue(
        PhotosTable.csv(List.of())
            .startsWith(
                "photo,sha256,station,taken_at,rafts,status,reason,remedy,mm_per_px,pose_error_mm,"
                    + "sharpness,exposure_clipped_fraction,light_cast"));
    assertTrue(
        SitesTable.csv(List.of())
            .startsWith(
                "photo,station,raft,pond,crop,variety,lot,site,plant,taken_at,dat,"
                    + "projected_area_cm2,projected_area_se_cm2,visible_area_cm2,closed,"
                    + "shared_outline_fraction,height_mm,height_source,parallax_factor,"
                    + "equivalent_diameter_mm,largest_diameter_mm,perimeter_mm,solidity,"
                    + "offset_x_mm,offset_y_mm,lab_l,lab_a,lab_b,pale_fraction,dead_fraction,"
                    + "pose_source,quality,reason"));
    assertTrue(
        RaftsTable.csv(List.of())
            .startsWith(
                "photo,station,raft,pond,berth,crop,lot,taken_at,dat,sites_planted,sites_empty,"
                    + "sites_closed,sites_held,canopy_cover,total_area_cm2,median_area_cm2,"
                    + "p10_area_cm2,p90_area_cm2,area_cv,leftover_canopy_cm2"));
  }

  @Test
  void aHeldSiteKeepsItsRowWithEmptyNumbersAndTheReason() {
    RaftRows rows =
        rows(
            "R1",
            "a.jpg",
            List.of(row("A1", OptionalDouble.empty(), "red leaf"), planted("A2", 10)));

    String held = SitesTable.csv(List.of(rows)).split("\r\n", -1)[1];

    assertEquals(
        "a.jpg,bench,R1,P1,butterhead,,L1,A1,R1/A1,2026-04-11T18:00:00+01:00,5.750"
            + ",".repeat(19)
            + ",slot,0.800,red leaf,S1,,,,",
        held);
  }

  @Test
  void aHeightThatASecondCameraSawIsInTheRowWithItsSource() {
    SiteMeasure site =
        new SiteMeasure(
            SiteId.parse("A1"),
            OptionalDouble.of(100),
            OptionalDouble.of(1),
            OptionalDouble.of(100),
            false,
            0,
            61.2,
            0.92,
            List.of(),
            List.of(),
            0.8,
            "",
            List.of(new SiteMeasure.Relief(HeightSource.STEREO, 88.5, 612.5, 0.9312)),
            -3.254);
    RaftRows rows = rows("R1", "a.jpg", List.of(new SiteRow(site, Optional.empty())));

    String row = SitesTable.csv(List.of(rows)).split("\r\n", -1)[1];

    assertTrue(row.contains(",61.2,stereo,0.9200,"), row);
    assertTrue(row.endsWith(",S1,88.5,612.5,0.931,-3.25"), row);
    assertTrue(
        SitesTable.csv(List.of())
            .endsWith(
                ",reason,slot,height_p95_mm,canopy_volume_cm3,height_seen_fraction"
                    + ",split_moved_cm2\r\n"));
  }

  @Test
  void aRaftCountsBareClosedAndHeldSitesApartFromItsSpread() {
    List<SiteRow> sites =
        List.of(
            planted("A1", 10),
            planted("A2", 20),
            planted("B1", 0),
            row("B2", OptionalDouble.empty(), "unsure"));

    String raft = RaftsTable.csv(List.of(rows("R1", "a.jpg", sites))).split("\r\n", -1)[1];

    // 10 and 20: sum 30, median 15, type 7 percentiles 11 and 19, sqrt(50) / 15 = 0.4714.
    assertTrue(raft.contains(",5.750,4,1,0,1,0.2000,30.00,15.00,11.00,19.00,0.4714,1.50,"), raft);
  }

  @Test
  void rowsAreSortedHoweverTheyCome() {
    List<RaftRows> rafts =
        List.of(
            rows("R2", "a.jpg", List.of(planted("A1", 1))),
            rows("R1", "b.jpg", List.of(planted("A1", 1))),
            rows("R1", "a.jpg", List.of(planted("A1", 1))));
    List<RaftRows> turned = new ArrayList<>(rafts);
    Collections.reverse(turned);

    assertEquals(SitesTable.csv(rafts), SitesTable.csv(turned));
    assertEquals(RaftsTable.csv(rafts), RaftsTable.csv(turned));
    assertTrue(
        RaftsTable.csv(rafts)
            .matches("(?s).*\r\na.jpg,bench,R1,.*\r\nb.jpg,bench,R1,.*\r\na.jpg,bench,R2,.*"));
  }

  @Test
  void textsOfTwoPlantingsAreListedAndAnAgeThatDiffersIsLeftOut() {
    SiteRow other =
        new SiteRow(
            planted("A2", 5).site(),
            Optional.of(new SitePlant(planting("basil"), "p", OptionalDouble.of(3))));

    String raft =
        RaftsTable.csv(List.of(rows("R1", "a.jpg", List.of(planted("A1", 5), other))))
            .split("\r\n", -1)[1];

    assertTrue(
        raft.startsWith("a.jpg,bench,R1,P1,1,basil;butterhead,L1,2026-04-11T18:00:00+01:00,,2,"),
        raft);
  }

  @Test
  void aPhotoOfSeveralRaftsGivesTheirMeanScaleAndLargestError() {
    RaftMeasure one = raft("R1", 0.5, 0.3);
    RaftMeasure two = raft("R2", 0.6, 0.7);

    String row = PhotosTable.csv(List.of(photo("a.jpg", List.of(one, two)))).split("\r\n", -1)[1];

    assertTrue(row.contains(",R1;R2,used,,,0.5500,0.70,"), row);
  }

  @Test
  void hostileTextsStayTexts() {
    RaftRows rows = rows("=HYPERLINK(\"x\")", "@a,b.jpg", List.of(planted("A1", 5)));

    String row = RaftsTable.csv(List.of(rows)).split("\r\n", -1)[1];

    assertTrue(row.startsWith("\"'@a,b.jpg\",bench,\"'=HYPERLINK(\"\"x\"\")\",P1,"), row);
  }

  private static RaftRows rows(String raft, String photo, List<SiteRow> sites) {
    RaftMeasure measure = raft(raft, 0.5, 0.4);
    return new RaftRows(photo(photo, List.of(measure)), measure, sites, "", OptionalDouble.empty());
  }

  private static RaftMeasure raft(String raft, double mmPerPx, double poseErrorMm) {
    return new RaftMeasure(
        Optional.of(raft),
        "S1",
        "deck",
        PoseSource.SLOT,
        poseErrorMm,
        mmPerPx,
        1600,
        true,
        OptionalDouble.of(0.2),
        OptionalDouble.of(1.5),
        List.of(),
        0.9,
        "");
  }

  private static PhotoMeasure photo(String photo, List<RaftMeasure> rafts) {
    return new PhotoMeasure(
        photo,
        "00",
        "bench",
        Optional.of(OffsetDateTime.parse("2026-04-11T18:00:00+01:00")),
        "",
        PhotoStatus.USED,
        "",
        "",
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        rafts);
  }

  private static SiteRow planted(String site, double areaCm2) {
    return row(site, OptionalDouble.of(areaCm2), "");
  }

  private static SiteRow row(String site, OptionalDouble areaCm2, String held) {
    SiteMeasure measure =
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
            0.8,
            held);
    SitePlant plant = new SitePlant(planting("butterhead"), "R1/" + site, OptionalDouble.of(5.75));
    return new SiteRow(measure, Optional.of(plant));
  }

  private static Planting planting(String crop) {
    return new Planting(
        "R1",
        "P1",
        "1",
        crop,
        "",
        "deck",
        Set.of(),
        Optional.empty(),
        Optional.of(LocalDate.of(2026, 4, 6)),
        Optional.empty(),
        Optional.empty(),
        "L1");
  }
}
