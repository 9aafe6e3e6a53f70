// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.fixture.HandMade;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.batch.fixture.TextPhotos;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;

class RemeasuredTest {
  @TempDir private Path folder;

  @Test
  void aMeasureOfANewProgramKeepsTheOneBefore() throws IOException {
    Kept before = TextPhotos.kept("a.jpg", 11, "rafts=R1 areas=10;20;0;5");
    Kept now = remeasured(before, "v2", 11, 18);

    try (History history = History.open(folder.resolve("history.db"))) {
      history.save(List.of(before));
      assertEquals(List.of(), history.remeasured());
      history.save(List.of(now));

      assertEquals(Optional.of(now), history.find(before.measure().sha256()));
      List<Remeasured> sites = history.remeasured();
      // A1 10 to 11, A2 20 to 18, B1 and B2 are seen by the first alone.
      assertEquals(List.of("A1", "A2", "B1", "B2"), sites.stream().map(Remeasured::site).toList());
      assertEquals(0.1, sites.get(0).change().getAsDouble(), 1e-12);
      assertEquals(-0.1, sites.get(1).change().getAsDouble(), 1e-12);
      assertEquals(OptionalDouble.empty(), sites.get(2).now().areaCm2());
      assertEquals("v1", sites.get(0).before().version());
      assertEquals("code of v1", sites.get(0).before().measuringCode());
      assertEquals("v2", sites.get(0).now().version());
    }
  }

  @Test
  void onlyTheLastTwoAreComparedThoughAllAreKept() throws IOException {
    Kept first = TextPhotos.kept("a.jpg", 11, "rafts=R1 areas=10;20;0;5");
    try (History history = History.open(folder.resolve("history.db"))) {
      history.save(List.of(first));
      history.save(List.of(remeasured(first, "v2", 12, 20)));
      history.save(List.of(remeasured(first, "v3", 15, 20)));

      Remeasured site = history.remeasured().get(0);
      assertEquals(OptionalDouble.of(12), site.before().areaCm2());
      assertEquals(OptionalDouble.of(15), site.now().areaCm2());
      assertEquals(2, history.check().rows().get("earlier_photos"));
    }
  }

  @Test
  void theSameProgramAndBookLeaveNoEarlierMeasure() throws IOException {
    Kept kept = TextPhotos.kept("a.jpg", 11, "rafts=R1");
    try (History history = History.open(folder.resolve("history.db"))) {
      history.save(List.of(kept));
      history.save(List.of(kept));

      assertEquals(0, history.check().rows().get("earlier_photos"));
      assertEquals(1, history.check().rows().get("photos"));
    }
  }

  /** Measures the same bytes otherwise: two sites. */
  private static Kept remeasured(Kept kept, String version, double a1, double a2) {
    PhotoMeasure photo = kept.measure();
    RaftMeasure raft =
        photo
            .rafts()
            .get(0)
            .withSites(List.of(HandMadeMeasurer.site("A1", a1), HandMadeMeasurer.site("A2", a2)));
    return Kept.fresh(HandMade.withRaft(photo, raft), TextPhotos.origin(version));
  }
}
