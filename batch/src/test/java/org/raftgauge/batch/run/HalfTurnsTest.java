// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.batch.page.RunPictures;
import org.raftgauge.core.measure.PhotoStatus;

/** Boards whose outline alone does not tell which way round they lie. */
class HalfTurnsTest {
  @TempDir private Path folder;
  private RunFixture runs;

  @BeforeEach
  void makeFolders() throws IOException {
    runs = new RunFixture(folder);
  }

  @Test
  void anOutlinesTurnIsSettledByTheEveningBeforeOfThisRunOrOfTheHistory() throws Exception {
    runs.photo("a.txt", "rafts=R1 areas=10;30;20;5 at=2026-04-09T18:00:00+01:00");
    runs.photo("b.txt", "rafts=R1 areas=6;24;36;12 pose=outline at=2026-04-10T18:00:00+01:00");
    runs.run("out");

    assertTrue(runs.areas("b.txt").contains("A1=12.00 A2=36.00 B1=24.00"), runs.areas("b.txt"));
    assertTrue(runs.text("out/photos.csv").contains(",R1,used,,"), runs.text("out/photos.csv"));

    // On a later run the evening before is only in the history, measured as it lay: turned.
    Files.delete(folder.resolve("photos/a.txt"));
    Files.delete(folder.resolve("photos/b.txt"));
    runs.photo("c.txt", "rafts=R1 areas=7;29;43;14 pose=outline" + RunFixture.EVENING);
    runs.run("out");

    assertTrue(runs.areas("c.txt").contains("A1=14.00 A2=43.00 B1=29.00"), runs.areas("c.txt"));
  }

  @Test
  void anOverlayIsDrawnAnewOnceItsRaftIsTurned() throws Exception {
    runs.photo("a.txt", "rafts=R1 areas=10;30;20;5 at=2026-04-09T18:00:00+01:00");
    runs.photo("b.txt", "rafts=R1 areas=6;24;36;12 pose=outline at=2026-04-10T18:00:00+01:00");
    runs.pictures = EnumSet.of(RunPictures.Kind.CANOPY);
    runs.run("out");

    var straight = javax.imageio.ImageIO.read(folder.resolve("out/canopy/a.site.png").toFile());
    var turned = javax.imageio.ImageIO.read(folder.resolve("out/canopy/b.site.png").toFile());
    // The disc at 100, 100 is A1's as it was measured, and B2's (the last of four) seen from there.
    assertEquals(1, straight.getRaster().getSample(100, 100, 0));
    assertEquals(4, turned.getRaster().getSample(100, 100, 0));
  }

  @Test
  void anOutlineWithoutAnEveningBeforeIsHeldAndAskedAbout() throws Exception {
    runs.photo("a.txt", "rafts=R1 pose=outline" + RunFixture.EVENING);
    runs.photo("b.txt", "rafts=? pose=outline" + RunFixture.EVENING);
    runs.photo("c.txt", "rafts=R3 pose=slot slot=S1" + RunFixture.EVENING);

    RunSummary summary = runs.run("out");

    assertEquals(2, summary.photos().get(PhotoStatus.HELD));
    assertEquals(1, summary.photos().get(PhotoStatus.USED), "a slot says which end is which");
    assertTrue(
        summary
            .attention()
            .get(0)
            .startsWith(
                "a.txt: no marker, tag or mark tells which end of the board is which, and no"
                    + " earlier photo of these plants does; lay it with A1 at its usual end"),
        summary.attention().toString());
    assertFalse(
        runs.text("out/sites.csv")
            .contains(
                "a.txt,bench,R1,P1,butterhead,,L1,A1,R1/A1,2026-04-11T18:00:00+01:00,5.750,10"));
  }
}
