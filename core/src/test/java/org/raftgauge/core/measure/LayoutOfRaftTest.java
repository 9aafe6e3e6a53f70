// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.plane.DrawnPhoto;

/** Which layout a board has whose marks fit two, or whose tag leaves hide. */
class LayoutOfRaftTest {
  private static final String LAYOUT =
      """
        %s:
          board: {width_mm: 600, length_mm: 1200}
          sites: {rows: %d, columns: %d, first_x_mm: 90, first_y_mm: 150, pitch_x_mm: 125, pitch_y_mm: 150}
          markers: {family: tag36h11, side_mm: 36, centres_mm: [[%d, 30], [570, 30], [570, 1170], [30, 1170]]}
          tag: {x_mm: 300, y_mm: 42, side_mm: 60}
      """;

  @TempDir private Path folder;

  @Test
  void theNameOfTheFileTellsTheRaftAndSoTheLayoutWhereMarkersFitTwo() {
    CropBook book = book(30);
    assertEquals("deck-18", measure(book, "2026-04-10_DR-18.png").layout());
    RaftMeasure dense = measure(book, "2026-04-10_DR-28.png");
    assertEquals("deck-28", dense.layout());
    assertEquals(28, dense.sites().size());
    assertEquals("", dense.held());
  }

  @Test
  void aManifestTellsItToo() {
    PhotoFacts facts = DrawnFarm.manifest("2026-04-10_photo.png", "bench", "DR-28");
    byte[] photo = DrawnPhoto.upright().png();
    assertEquals(
        "deck-28", MeasurePhoto.measure(photo, facts, book(30)).measure().rafts().get(0).layout());
  }

  @Test
  void aTagThatOnlyASecondLookReadsTellsItToo() {
    // Modules of 1.6 pixels: the markers are grouped, as either layout's, before the tag is read.
    byte[] photo = DrawnPhoto.upright().tagged("DR-28-NORTH-POND-SOUTH").board(0.4).png();
    PhotoMeasure dense = photo(book(30), "2026-04-10_photo.png", photo);
    assertEquals("deck-28", dense.rafts().get(0).layout());
    assertEquals(28, dense.rafts().get(0).sites().size());
    assertEquals(PhotoStatus.USED, dense.status());
  }

  @Test
  void aBoardWhoseMarkersContradictItsTagsPlantingIsHeld() {
    byte[] photo = DrawnPhoto.upright().tagged("DR-28").png();
    assertEquals(
        "its marks fit layout deck-18, which is not that of the planting on DR-28",
        photo(book(90), "2026-04-10_photo.png", photo).reason());
  }

  @Test
  void aBoardWhoseMarkersContradictThePlantingIsHeld() {
    // The planting's board would have its first marker 60 mm further in.
    PhotoMeasure photo = photo(book(90), "2026-04-10_DR-28.png");
    assertEquals(PhotoStatus.HELD, photo.status());
    assertEquals(
        "its marks fit layout deck-18, which is not that of the planting on DR-28", photo.reason());
    assertEquals(
        "photograph it again with its tag in view, or mend the layout in plantings.csv",
        photo.remedy());
  }

  private static RaftMeasure measure(CropBook book, String name) {
    return photo(book, name).rafts().get(0);
  }

  private static PhotoMeasure photo(CropBook book, String name) {
    return photo(book, name, DrawnPhoto.upright().png());
  }

  private static PhotoMeasure photo(CropBook book, String name, byte[] photo) {
    return MeasurePhoto.measure(photo, DrawnFarm.manifest(name, "bench", ""), book).measure();
  }

  /** Two layouts on the same board; the second one's first marker lies at an x, mm. */
  private CropBook book(int firstMarkerMm) {
    return DrawnFarm.folder(folder)
        .with(
            "layouts.yaml",
            "layouts:\n"
                + String.format(Locale.ROOT, LAYOUT, "deck-18", 6, 3, 30)
                + String.format(Locale.ROOT, LAYOUT, "deck-28", 7, 4, firstMarkerMm))
        .with(
            "plantings.csv",
            """
            raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot
            DR-18,P1,1,basil,,deck-18,,2026-03-20,2026-04-01,,,L1
            DR-28,P1,2,basil,,deck-28,,2026-03-20,2026-04-01,,,L2
            DR-28-NORTH-POND-SOUTH,P1,3,basil,,deck-28,,2026-03-20,2026-04-01,,,L3
            """)
        .sound();
  }
}
