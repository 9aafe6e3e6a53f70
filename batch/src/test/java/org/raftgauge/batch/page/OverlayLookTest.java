// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.raftgauge.batch.fixture.HandMade;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.PathTraced;
import org.raftgauge.core.measure.CanopyMap;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** Draws overlays of path-traced photos into {@code target/overlays}, to be looked at. */
class OverlayLookTest {

  @ParameterizedTest
  @CsvSource({
    "2026-04-11,DR-0403",
    "2026-04-16,DR-0401",
    "2026-04-20,DR-0402",
    "2026-04-26,DR-0401"
  })
  void anOverlayOfAPhotorealRaftIsDrawn(String date, String raft) throws IOException {
    Optional<PathTraced> data = PathTraced.find();
    assumeTrue(data.isPresent(), "shared data path-traced is absent: overlay not drawn");

    BufferedImage picture = Overlay.of(data.get().photo(date, raft), new HandMadeFarm(raft));

    Path file = Path.of("target", "overlays", date + "_" + raft + ".jpg");
    Files.createDirectories(file.getParent());
    PictureFiles.jpeg(picture, file);
    assertTrue(picture.getHeight() > 2000, "photo of 1200 x 2000 px with a strip below it");
  }

  /** Sites of one photo made closed, held and ownerless, so that every mark is seen. */
  @Test
  void closedHeldAndOwnerlessCanopyIsMarked() throws IOException {
    Optional<PathTraced> data = PathTraced.find();
    assumeTrue(data.isPresent(), "shared data path-traced is absent: overlay not drawn");
    PhotoResult plain = data.get().photo("2026-04-26", "DR-0402");
    PhotoMeasure photo = plain.measure();
    RaftMeasure raft = photo.rafts().get(0);
    List<SiteMeasure> sites = new ArrayList<>();
    for (SiteMeasure site : raft.sites()) {
      String name = site.site().toString();
      sites.add(
          name.startsWith("D")
              ? HandMade.closed(site)
              : name.startsWith("F") ? HandMade.held(site, "red leaf, unsure") : site);
    }
    CanopyMap canopy = plain.canopy().get();
    short[] owner = canopy.owner().clone();
    for (int i = 0; i < owner.length; i++) {
      owner[i] = owner[i] == 1 || owner[i] == 8 ? 0 : owner[i];
    }
    PhotoResult doctored =
        new PhotoResult(
            HandMade.withRaft(photo, raft.withSites(sites)),
            plain.picture(),
            Optional.of(new CanopyMap(canopy.width(), canopy.height(), canopy.coverage(), owner)),
            plain.drawings());

    BufferedImage picture = Overlay.of(doctored, new HandMadeFarm("DR-0402"));

    Path file = Path.of("target", "overlays", "marks.jpg");
    Files.createDirectories(file.getParent());
    PictureFiles.jpeg(picture, file);
    assertTrue(picture.getHeight() > 2000, "photo of 1200 x 2000 px with a strip below it");
  }
}
