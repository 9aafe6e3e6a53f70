// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.plane.DrawnPhoto;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * The whole way on a drawn raft: 1.45 mm a pixel, flat discs, two codes of noise. An outline put
 * wrong by 0.15 px (0.2 mm) moves a disc of 60 mm by 0.8 %.
 */
class MeasurePhotoTest {
  private static final double[] LEAF = {0.117, 0.296, 0.034};
  private static final double[] RED_LEAF = {0.107, 0.021, 0.03};

  @TempDir static Path folder;
  private static CropBook book;
  private static byte[] raft;

  @BeforeAll
  static void drawOnce() {
    book = DrawnFarm.book(folder);
    raft = plants(DrawnPhoto.upright().tagged("DR-1")).png();
  }

  @Test
  void aDrawnRaftIsMeasuredFromItsBytes() {
    PhotoResult result = measure(raft, DrawnFarm.NAME);
    PhotoMeasure photo = result.measure();
    assertEquals(PhotoStatus.USED, photo.status(), photo.reason());
    assertEquals("", photo.reason());
    assertEquals("bench", photo.station());
    // A date alone stands for 18:00, in Lisbon's summer time.
    assertEquals("2026-04-10T18:00+01:00", photo.takenAt().orElseThrow().toString());
    assertEquals(1, photo.rafts().size());
    RaftMeasure measured = photo.rafts().get(0);
    assertEquals(Optional.of("DR-1"), measured.raft());
    assertEquals(PoseSource.MARKERS, measured.poseSource());
    assertEquals("deck-18", measured.layout());
    assertTrue(measured.halfTurnKnown());
    assertEquals(18, measured.sites().size());
    assertEquals(1600, measured.cameraHeightMm(), 3);
    assertAreas(measured, 0.015);
    // Discs of 60, 45 and 30 mm on 0.72 m2: sum of their areas over the board's.
    double cover = Math.PI * (60 * 60 + 45 * 45 + 30 * 30) / (600.0 * 1200);
    assertEquals(cover, measured.canopyCover().orElseThrow(), 0.02 * cover);
    assertEquals(0, measured.leftoverCanopyCm2().orElseThrow(), 0.05);
  }

  @Test
  void theSameBytesGiveTheSameMeasureTwice() {
    PhotoMeasure once = measure(raft, DrawnFarm.NAME).measure();
    assertEquals(once, measure(raft.clone(), DrawnFarm.NAME).measure());
    assertEquals(once, measure(raft, DrawnFarm.NAME).measure());
  }

  @Test
  void aTurnedBoardMeasuresTheSame() {
    for (double turn : new double[] {37, 180, 251}) {
      byte[] photo = plants(DrawnPhoto.turned(turn).tagged("DR-1")).png();
      PhotoMeasure measure = measure(photo, "square/" + DrawnFarm.NAME).measure();
      assertEquals(PhotoStatus.USED, measure.status(), turn + " degrees " + measure.reason());
      assertAreas(measure.rafts().get(0), 0.015);
    }
  }

  @Test
  void warmAndDimLightMeasureTheSameToTwoPercent() {
    double[][] lights = {{1, 0.75, 0.45}, {0.125, 0.125, 0.125}};
    for (double[] light : lights) {
      byte[] photo = plants(DrawnPhoto.upright().tagged("DR-1")).light(light).png();
      PhotoMeasure measure = measure(photo, DrawnFarm.NAME).measure();
      assertEquals(PhotoStatus.USED, measure.status(), measure.reason());
      assertAreas(measure.rafts().get(0), 0.02);
    }
  }

  @Test
  void redBlueLampsAreRefusedWithTheRemedy() {
    byte[] photo = plants(DrawnPhoto.upright().tagged("DR-1")).light(0.67, 0.117, 0.76).png();
    PhotoMeasure measure = measure(photo, DrawnFarm.NAME).measure();
    assertEquals(PhotoStatus.HELD, measure.status());
    assertEquals("the light is so coloured that leaf and board cannot be told", measure.reason());
    assertEquals("switch to white light for the photo", measure.remedy());
    for (SiteMeasure site : measure.rafts().get(0).sites()) {
      assertTrue(site.projectedAreaCm2().isEmpty());
      assertEquals(measure.reason(), site.held());
    }
  }

  @Test
  void anEmptyRaftHasNoCanopyOnWhiteGreyAndBlack() {
    for (double board : new double[] {0.75, 0.2, 0.03}) {
      byte[] photo = DrawnPhoto.upright().tagged("DR-1").board(board).png();
      RaftMeasure measured = measure(photo, DrawnFarm.NAME).measure().rafts().get(0);
      assertEquals("", measured.held());
      for (SiteMeasure site : measured.sites()) {
        assertEquals(0, site.projectedAreaCm2().orElseThrow(), "board " + board);
      }
      assertEquals(0, measured.canopyCover().orElseThrow(), "board " + board);
    }
  }

  @Test
  void aRaftFullOfLeafIsFullAndClosed() {
    // Rows of discs that leave the markers and the tag in view.
    DrawnPhoto photo = DrawnPhoto.upright().tagged("DR-1");
    for (int row = 0; row < 5; row++) {
      for (int column = 0; column < 3; column++) {
        photo.disc(120 + 180 * column, 240 + 180 * row, 140, LEAF);
      }
    }
    RaftMeasure measured = measure(photo.png(), DrawnFarm.NAME).measure().rafts().get(0);
    // The discs cover all of the board from y = 100 + some to 1100 - some: over 0.8 of it.
    assertTrue(measured.canopyCover().orElseThrow() > 0.8, "" + measured.canopyCover());
    SiteMeasure middle = measured.sites().get(7);
    assertTrue(middle.closed());
    // Its cell of the grid is 18 x 18 cm; borders inside closed canopy are guesses.
    assertEquals(324, middle.projectedAreaCm2().orElseThrow(), 0.25 * 324);
  }

  @Test
  void filmBetweenSitesNeverBecomesAPlant() {
    // Between four sites, 127 mm from each; one pale as wet foam, one as green as leaf.
    byte[] photo =
        DrawnPhoto.upright()
            .tagged("DR-1")
            .disc(210, 240, 30, 0.27, 0.31, 0.17)
            .disc(390, 780, 20, LEAF)
            .png();
    RaftMeasure measured = measure(photo, DrawnFarm.NAME).measure().rafts().get(0);
    for (SiteMeasure site : measured.sites()) {
      assertTrue(site.projectedAreaCm2().orElseThrow() < 2, site.site() + " " + site);
    }
    // The green one, pi * 2^2 cm2, is nobody's and counted; the pale one at most that.
    double leftover = measured.leftoverCanopyCm2().orElseThrow();
    assertTrue(leftover > 0.95 * Math.PI * 4 && leftover < Math.PI * (4 + 9), "" + leftover);
  }

  @Test
  void anUnknownRaftIsMeasuredAndKept() {
    byte[] photo = plants(DrawnPhoto.upright().tagged("XX-9")).png();
    RaftMeasure unknown = MeasurePhoto.measure(photo, told("a.png"), book).measure().rafts().get(0);
    assertEquals(Optional.of("XX-9"), unknown.raft());
    assertAreas(unknown, 0.015);
    byte[] bare = plants(DrawnPhoto.upright()).png();
    PhotoMeasure measure = MeasurePhoto.measure(bare, told("b.png"), book).measure();
    assertEquals(PhotoStatus.USED, measure.status(), measure.reason());
    assertEquals(Optional.empty(), measure.rafts().get(0).raft());
    assertAreas(measure.rafts().get(0), 0.015);
  }

  @Test
  void twoSourcesThatDisagreeHoldTheRaftWithBothNamed() {
    PhotoMeasure name = measure(raft, "2026-04-10_DR-2.png").measure();
    assertEquals(PhotoStatus.HELD, name.status());
    assertEquals("its tag says raft DR-1, the file's name says DR-2", name.reason());
    assertEquals("mend the one that is wrong", name.remedy());
    assertEquals(Optional.empty(), name.rafts().get(0).raft());
    assertTrue(name.rafts().get(0).canopyCover().isEmpty());
    PhotoMeasure manifest =
        MeasurePhoto.measure(raft, DrawnFarm.manifest(DrawnFarm.NAME, "", "DR-3"), book).measure();
    assertEquals("its tag says raft DR-1, the manifest says DR-3", manifest.reason());
    PhotoMeasure copy = measure(raft, "2026-04-10_DR-1 copy.png").measure();
    assertEquals(PhotoStatus.USED, copy.status(), copy.reason());
    assertEquals(Optional.of("DR-1"), copy.rafts().get(0).raft());
  }

  @Test
  void twoCropsOnOneRaftAreReadEachWithItsOwnColours() {
    // A2 holds basil; F2 is red oakleaf; a red disc on a basil site is no green leaf.
    byte[] photo =
        DrawnPhoto.upright()
            .tagged("DR-2")
            .disc(300, 330, 50, LEAF)
            .disc(300, 1050, 50, RED_LEAF)
            .disc(120, 510, 50, RED_LEAF)
            .png();
    RaftMeasure measured = measure(photo, "2026-04-10_DR-2.png").measure().rafts().get(0);
    double disc = Math.PI * 25;
    assertEquals(1, area(measured, "B2") / disc, 0.02);
    assertTrue(
        site(measured, "C1").held().startsWith("something dark that is no leaf of its crop"));
    SiteMeasure red = site(measured, "F2");
    // Provisional: measured right or held, never wrong.
    assertTrue(
        !red.held().isEmpty() || Math.abs(red.projectedAreaCm2().orElseThrow() / disc - 1) < 0.03,
        red.toString());
  }

  @Test
  void aTallCropsAreaIsCorrectedForItsHeight() {
    byte[] photo = DrawnPhoto.upright().tagged("DR-3").disc(300, 510, 70, LEAF).png();
    RaftMeasure measured = measure(photo, "2026-04-10_DR-3.png").measure().rafts().get(0);
    // sqrt(A) = sqrt(S) / (1 + c sqrt(S) / H) with S = pi * 49 cm2, c = 5.2 mm, H = 1600 mm.
    double root = Math.sqrt(Math.PI * 49) / (1 + 5.2 * Math.sqrt(Math.PI * 49) / 1600);
    assertEquals(1, area(measured, "C2") / (root * root), 0.015);
    assertEquals(5.2 * root, site(measured, "C2").heightMm(), 0.6);
  }

  @Test
  void aRulersHeightStandsInForTheCropsModel(@TempDir Path other) {
    // Weighed next morning, and a plant weighed before the photo, which is gone.
    CropBook weighed =
        DrawnFarm.folder(other)
            .with(
                "weighings.csv",
                """
                raft,site,weighed_at,fresh_weight_g,top_height_mm,state
                DR-3,C2,2026-04-11T08:00,90,180,whole
                DR-3,B2,2026-04-10T09:00,80,180,whole
                DR-3,D2,2026-04-12T08:00,80,180,whole
                """)
            .sound();
    byte[] photo = DrawnPhoto.upright().tagged("DR-3").disc(300, 510, 70, LEAF).png();
    RaftMeasure measured =
        MeasurePhoto.measure(photo, PhotoFacts.of("2026-04-10_DR-3.png"), weighed)
            .measure()
            .rafts()
            .get(0);
    // Mean height 0.5 * 180 mm under 1600 mm: (1 - 90 / 1600)^2 of the area seen.
    double factor = (1 - 90 / 1600.0) * (1 - 90 / 1600.0);
    assertEquals(List.of(SiteId.parse("C2")), measured.rulerSites());
    assertEquals(90, site(measured, "C2").heightMm(), 1e-9);
    assertEquals(1, area(measured, "C2") / (Math.PI * 49 * factor), 0.015);
  }

  @Test
  void aMirroredPhotoIsRefusedWithTheRemedy() {
    byte[] photo = plants(DrawnPhoto.upright().tagged("DR-1")).mirrored().png();
    PhotoMeasure measure = measure(photo, DrawnFarm.NAME).measure();
    assertEquals(PhotoStatus.REFUSED, measure.status());
    assertEquals(
        "the photo is mirrored: its markers or its tag read only as in a mirror", measure.reason());
    assertTrue(measure.remedy().startsWith("switch mirroring off"), measure.remedy());
  }

  @Test
  void sitesNamedFromTheOtherEndTakeTheirDrawingAlong() {
    PhotoResult result = measure(raft, DrawnFarm.NAME);
    RaftMeasure straight = result.measure().rafts().get(0);
    RaftMeasure turned = straight.turned();
    // A1 (60 mm) is F3 seen from the far corner, B2 is E2, F3 is A1.
    assertEquals(area(straight, "A1"), area(turned, "F3"));
    assertEquals(area(straight, "B2"), area(turned, "E2"));
    assertEquals(
        -site(straight, "A1").shape().get(0).offsetXMm(),
        site(turned, "F3").shape().get(0).offsetXMm());
    assertEquals(straight, turned.turned());
    PhotoResult drawn = result.settled(result.measure(), java.util.Set.of(0));
    var before = result.drawings().get(0);
    var after = drawn.drawings().get(0);
    assertEquals(before.siteCentresPx().get(0), after.siteCentresPx().get(17));
    assertEquals(before.boardCornersPx().get(0), after.boardCornersPx().get(2));
    assertEquals(1 + 17, ownerAt(drawn, 17));
    assertEquals(
        result.drawings(), result.settled(result.measure(), java.util.Set.of()).drawings());
  }

  @Test
  void aBoardThatThePicturesEdgeCutsIsHeld() {
    byte[] photo = plants(DrawnPhoto.shifted(-170).tagged("DR-1")).png();
    PhotoMeasure measure = measure(photo, DrawnFarm.NAME).measure();
    assertEquals(PhotoStatus.HELD, measure.status(), measure.toString());
    assertTrue(
        measure.reason().matches("only \\d\\d % of the board is in the photo"), measure.reason());
    assertEquals("photograph it again", measure.remedy());
  }

  @Test
  void anUnknownStationIsRefusedWithTheKnownOnesNamed() {
    PhotoMeasure measure =
        MeasurePhoto.measure(raft, DrawnFarm.manifest(DrawnFarm.NAME, "roof", ""), book).measure();
    assertEquals(PhotoStatus.REFUSED, measure.status());
    assertEquals("the book has no usable station \"roof\"", measure.reason());
    assertEquals("use one of bench, square", measure.remedy());
    assertEquals(List.of(), measure.rafts());
  }

  @Test
  void aPhotoWithoutAnyTimeIsRefused() {
    PhotoMeasure measure = measure(raft, "raft.png").measure();
    assertEquals(PhotoStatus.REFUSED, measure.status());
    assertEquals(List.of(), measure.rafts());
    assertNotEquals("", measure.reason());
    assertNotEquals("", measure.remedy());
    assertTrue(measure.takenAt().isEmpty());
  }

  @Test
  void aFrameTakenInTheDarkIsSkippedWithoutAlarm() {
    byte[] photo = plants(DrawnPhoto.upright().tagged("DR-1")).light(0.002, 0.002, 0.002).png();
    PhotoMeasure measure = measure(photo, DrawnFarm.NAME).measure();
    assertEquals(PhotoStatus.SKIPPED, measure.status());
    assertEquals("taken in the dark", measure.reason());
    assertEquals("", measure.remedy());
  }

  @Test
  void bytesThatAreNoPictureAreRefusedAndStillKnownByTheirHash() {
    PhotoMeasure measure =
        measure("abc".getBytes(StandardCharsets.US_ASCII), DrawnFarm.NAME).measure();
    assertEquals(PhotoStatus.REFUSED, measure.status());
    // FIPS 180-2, appendix B.1: SHA-256 of "abc".
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", measure.sha256());
  }

  @Test
  void theCanopyInThePhotosOwnPixelsLiesWhereTheLeafIs() {
    PhotoResult result = measure(raft, DrawnFarm.NAME);
    CanopyMap map = result.canopy().orElseThrow();
    assertEquals(600, map.width());
    assertEquals(1000, map.height());
    long sum = 0;
    for (int i = 0; i < map.coverage().length; i++) {
      sum += map.coverage()[i] & 0xff;
      boolean half = map.coverage()[i] < 0;
      assertEquals(half, map.owner()[i] != 0, "px " + i);
    }
    double mm = result.measure().rafts().get(0).mmPerPx();
    double truth = Math.PI * (60 * 60 + 45 * 45 + 30 * 30);
    // Tilt and lens change the scale over the photo by a percent or two.
    assertEquals(1, sum / 255.0 * mm * mm / truth, 0.03);
    // A1 (120, 150), B2 and F3: 1 + row * 3 + column at the plants' middles.
    assertEquals(1, ownerAt(result, 0));
    assertEquals(1 + 4, ownerAt(result, 4));
    assertEquals(1 + 17, ownerAt(result, 17));
  }

  /** Facts of a photo of which a manifest tells only when and at which station. */
  private static PhotoFacts told(String photo) {
    return new PhotoFacts(
        photo,
        Optional.of("2026-04-10T19:00"),
        Optional.of("bench"),
        Optional.empty(),
        Optional.empty());
  }

  private static int ownerAt(PhotoResult result, int site) {
    CanopyMap map = result.canopy().orElseThrow();
    var centre = result.drawings().get(0).siteCentresPx().get(site);
    return map.owner()[
        (int) Math.round(centre.yPx()) * map.width() + (int) Math.round(centre.xPx())];
  }

  /** Discs of 60, 45 and 30 mm on A1, B2 and F3. */
  private static DrawnPhoto plants(DrawnPhoto photo) {
    return photo.disc(125, 155, 60, LEAF).disc(300, 330, 45, LEAF).disc(480, 1050, 30, LEAF);
  }

  private static void assertAreas(RaftMeasure raft, double share) {
    assertEquals("", raft.held());
    for (SiteMeasure site : raft.sites()) {
      double radius =
          switch (site.site().toString()) {
            case "A1" -> 6;
            case "B2" -> 4.5;
            case "F3" -> 3;
            default -> 0;
          };
      double truth = Math.PI * radius * radius;
      // The smallest disc has a rim of 0.4 cm2 a pixel of 1.45 mm: 0.15 px is 2 % of it.
      assertEquals(
          truth,
          site.projectedAreaCm2().orElseThrow(),
          share * truth + (radius == 3 ? 0.3 : 0),
          site.site().toString());
    }
  }

  private static SiteMeasure site(RaftMeasure raft, String name) {
    return raft.sites().stream()
        .filter(s -> s.site().toString().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static double area(RaftMeasure raft, String name) {
    return site(raft, name).projectedAreaCm2().orElseThrow();
  }

  private static PhotoResult measure(byte[] photo, String name) {
    return MeasurePhoto.measure(photo, PhotoFacts.of(name), book);
  }
}
