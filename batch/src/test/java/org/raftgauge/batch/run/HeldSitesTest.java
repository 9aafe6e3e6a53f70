// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.fixture.HandMade;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.report.RaftRows;
import org.raftgauge.core.report.SiteRow;
import org.raftgauge.core.site.SiteMeasure;

class HeldSitesTest {
  private static final String NO_CROP = "the book has no usable crop for its planting";

  private final PhotoMeasure photo =
      new HandMadeMeasurer("s")
          .measure(
              "rafts=R1 area=20 at=2026-04-11T18:00:00+01:00".getBytes(StandardCharsets.UTF_8),
              PhotoFacts.of("a.jpg"))
          .measure();

  @Test
  void sitesOfAMisspeltCropAreSaidThoughThePhotoWasUsed() {
    assertEquals(
        List.of(
            "a.jpg: raft R1, 2 of 4 sites held: " + NO_CROP,
            "a.jpg: raft R1, 1 of 4 sites held: unsure"),
        HeldSites.lines(rows("", NO_CROP, NO_CROP, "unsure")));
  }

  @Test
  void aRaftWithoutHeldSitesIsNotMentioned() {
    assertEquals(List.of(), HeldSites.lines(rows("")));
  }

  @Test
  void aRaftThatNoPlantingExplainsIsLeftToItsPhotosReason() {
    assertEquals(
        List.of(),
        HeldSites.lines(
            rows(
                "unassigned: raft R1 has no planting on 2026-04-11; mend plantings.csv", NO_CROP)));
  }

  @Test
  void aHeldPhotoAtTheSameTimeOrLaterTakesNoLeafFromTheSummary() {
    RaftRows sound = rows("");
    RaftRows held = rows("", "dark", "dark", "dark", "dark");
    assertEquals(OptionalDouble.empty(), held.totalAreaCm2());
    assertEquals(List.of(sound), List.copyOf(Summarise.latest(List.of(held, sound))));
    assertEquals(List.of(sound), List.copyOf(Summarise.latest(List.of(sound, held))));
  }

  /** Makes rows of the four sites, the first ones held for the reasons given. */
  private RaftRows rows(String doubt, String... reasons) {
    RaftMeasure raft = photo.rafts().get(0);
    List<SiteRow> rows = new ArrayList<>();
    for (SiteMeasure site : raft.sites()) {
      boolean held = rows.size() < reasons.length;
      rows.add(
          new SiteRow(held ? HandMade.held(site, reasons[rows.size()]) : site, Optional.empty()));
    }
    return new RaftRows(photo, raft, rows, doubt, OptionalDouble.empty());
  }
}
