// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.book.Units;
import org.raftgauge.core.evening.RaftGrowth;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.track.Spread;
import org.raftgauge.core.track.Verdict;

class RaftPlotsTest {
  @TempDir Path folder;

  private static RaftGrowth raft(String name, Verdict ofSecond) {
    return new RaftGrowth(
        "P1",
        name,
        "kale",
        PlantSeries.AgeClock.TRANSPLANT,
        List.of(
            new RaftGrowth.OfSite(
                new SiteId(0, 0),
                Optional.of(Verdict.ON_TRACK),
                List.of(new RaftGrowth.Point(1, 4), new RaftGrowth.Point(2, 5))),
            new RaftGrowth.OfSite(
                new SiteId(0, 1),
                Optional.of(ofSecond),
                List.of(new RaftGrowth.Point(1, 2), new RaftGrowth.Point(2, 2.5)))),
        List.of(new RaftGrowth.Reference(1, 4, 3, 5.4), new RaftGrowth.Reference(2, 5, 3.9, 6.75)));
  }

  @Test
  void plotIsAnSvgDocumentNamedForTheRaft() throws Exception {
    RaftPlots.write(folder, List.of(raft("K-1", Verdict.LAGGING)), Units.METRIC, Spread.IN_TURN);
    assertEquals(
        "svg",
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(folder.resolve("growth-K-1.svg").toFile())
            .getDocumentElement()
            .getTagName());
  }

  @Test
  void flaggedSiteHasAColourOfItsOwn() throws IOException {
    RaftPlots.write(
        folder.resolve("a"), List.of(raft("K-1", Verdict.LAGGING)), Units.METRIC, Spread.IN_TURN);
    RaftPlots.write(
        folder.resolve("b"), List.of(raft("K-1", Verdict.ON_TRACK)), Units.METRIC, Spread.IN_TURN);
    // The fourth series' colour, 204 121 167: band, reference and the others come before.
    assertTrue(Files.readString(folder.resolve("a/growth-K-1.svg")).contains("rgb(204,121,167)"));
    assertFalse(Files.readString(folder.resolve("b/growth-K-1.svg")).contains("rgb(204,121,167)"));
  }

  @Test
  void nameWithPathPartsStaysInTheFolderAndTwoAlikeAreKeptApart() throws IOException {
    RaftPlots.write(
        folder,
        List.of(raft("../a", Verdict.PALE), raft(".._A", Verdict.PALE)),
        Units.METRIC,
        Spread.IN_TURN);
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(
          List.of("growth-___A-2.svg", "growth-___a.svg"),
          files.map(f -> f.getFileName().toString()).sorted().toList());
    }
  }

  @Test
  void raftWithoutAnAreaHasNoPlot() throws IOException {
    RaftGrowth bare =
        new RaftGrowth("", "K-2", "kale", PlantSeries.AgeClock.SOWING, List.of(), List.of());
    RaftPlots.write(folder.resolve("none"), List.of(bare), Units.METRIC, Spread.IN_TURN);
    assertFalse(Files.exists(folder.resolve("none")));
  }
}
