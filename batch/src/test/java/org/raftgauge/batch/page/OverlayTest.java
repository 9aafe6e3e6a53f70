// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.fixture.HandMade;
import org.raftgauge.batch.fixture.HandMadeFarm;
import org.raftgauge.batch.fixture.HandMadeMeasurer;
import org.raftgauge.core.measure.CanopyMap;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.site.SiteMeasure;

/**
 * The hand-made photo is 300 x 300 px and is drawn at 1200, four times as large: the disc of A1, 25
 * px around pixel 100, 100, is drawn around 402, 402 with a radius of about 102.
 */
class OverlayTest {
  private static final int MIDDLE = 402;
  private static final int RADIUS = 102;

  private final HandMadeFarm farm = new HandMadeFarm("R1", "R2");

  @Test
  void theOutlineOfAnOpenSiteHasItsColourAllAround() {
    BufferedImage picture = Overlay.of(photo("rafts=R1 area=20"), farm);

    assertTrue(ring(picture, MIDDLE, MIDDLE, RADIUS, Palette.YELLOW) > 0.95);
    assertTrue(ring(picture, 2 * MIDDLE - 2, MIDDLE, RADIUS, Palette.SKY_BLUE) > 0.95);
  }

  @Test
  void leafAndBoardAreLeftAsTheyAre() {
    BufferedImage picture = Overlay.of(photo("rafts=R1 area=20"), farm);

    assertEquals(new Color(40, 150, 30), new Color(picture.getRGB(MIDDLE, MIDDLE - 60)));
    assertEquals(new Color(235, 235, 235), new Color(picture.getRGB(MIDDLE - 200, MIDDLE)));
  }

  @Test
  void theOutlineOfAClosedSiteIsBroken() {
    BufferedImage picture = Overlay.of(with("rafts=R1 area=20", HandMade::closed), farm);

    double coloured = ring(picture, MIDDLE, MIDDLE, RADIUS, Palette.YELLOW);
    assertTrue(coloured > 0.4 && coloured < 0.8, "share of the ring in colour: " + coloured);
  }

  @Test
  void theOutlineOfAHeldSiteIsBrokenAndWhite() {
    BufferedImage picture =
        Overlay.of(with("rafts=R1 area=20", site -> HandMade.held(site, "unsure")), farm);

    assertEquals(0, ring(picture, MIDDLE, MIDDLE, RADIUS, Palette.YELLOW));
    double white = ring(picture, MIDDLE, MIDDLE, RADIUS, Palette.PAPER);
    assertTrue(white > 0.4 && white < 0.8, "share of the ring in white: " + white);
  }

  @Test
  void aBareSiteHasAHollowRing() {
    BufferedImage picture = Overlay.of(photo("rafts=R1 area=20"), farm);

    // B1 is bare, at 100, 200; ring of 0.11 of the distance of sites: 0.11 * 400.
    assertTrue(ring(picture, MIDDLE, 2 * MIDDLE - 2, 44, Palette.PAPER) > 0.95);
    assertEquals(new Color(235, 235, 235), new Color(picture.getRGB(MIDDLE, 2 * MIDDLE - 2)));
  }

  @Test
  void aHoleThatIsNotPlantedHasACross() {
    BufferedImage picture = Overlay.of(photo("rafts=R1 area=20"), farm);

    // B2 is not planted, at 200, 200; arms of 0.07 of the distance of sites: 28.
    int hole = 2 * MIDDLE - 2;
    for (int d : new int[] {-20, -10, 0, 10, 20}) {
      assertEquals(Color.WHITE, new Color(picture.getRGB(hole + d, hole + d)), "at " + d);
      assertEquals(Color.WHITE, new Color(picture.getRGB(hole + d, hole - d)), "at " + d);
    }
    assertEquals(new Color(235, 235, 235), new Color(picture.getRGB(hole + 20, hole)));
  }

  @Test
  void aPlantedSiteOfNoAreaHasItsRingThoughSpecksAreThere() {
    BufferedImage picture = Overlay.of(photo("rafts=R1 area=0"), farm);

    assertTrue(ring(picture, MIDDLE, MIDDLE, 44, Palette.PAPER) > 0.95);
    assertEquals(0, ring(picture, MIDDLE, MIDDLE, RADIUS, Palette.YELLOW));
  }

  @Test
  void aTraysAgeIsCountedFromSowing() {
    PhotoResult result = photo("rafts=R1 area=20");

    assertTrue(Caption.of(result.measure(), new TrayFarm()).get(1).contains("DAS 19.7"));
    assertTrue(Caption.of(result.measure(), farm).get(1).contains("DAT 5.8"));
  }

  /** A farm of one tray, sown on 23 March. */
  private static final class TrayFarm extends HandMadeFarm {
    TrayFarm() {
      super("R1");
    }

    @Override
    public java.util.Optional<org.raftgauge.core.report.SitePlant> plantAt(
        String raft, org.raftgauge.core.book.SiteId site, java.time.OffsetDateTime at) {
      // 23 March 00:00 to 11 April 18:00 is 19.75 days.
      return super.plantAt(raft, site, at)
          .map(
              plant ->
                  new org.raftgauge.core.report.SitePlant(
                      asTray(plant.planting()), plant.plant(), java.util.OptionalDouble.of(19.74)));
    }

    private static org.raftgauge.core.book.Planting asTray(org.raftgauge.core.book.Planting p) {
      return new org.raftgauge.core.book.Planting(
          p.raft(),
          p.pond(),
          p.berth(),
          p.crop(),
          p.variety(),
          p.layout(),
          p.sites(),
          p.sownOn(),
          java.util.Optional.empty(),
          p.harvestBy(),
          p.endedOn(),
          p.lot());
    }
  }

  @Test
  void areasOnATrayOfCloseCellsAreWrittenLargeEnoughToRead() {
    // 20 rows over a screen of 1080 px: 50 px a site; 13 px is the height of a menu's letters.
    for (double pitchPx : new double[] {50, 80, 120, 140, 300}) {
      float font = SiteMarks.fontPx(pitchPx, 0.27);
      assertTrue(font >= 13, pitchPx + " gives " + font);
      // Four letters, each about 0.6 of the size wide, must fit beside each other.
      assertTrue(4 * 0.6 * font < pitchPx, pitchPx + " gives " + font);
    }
  }

  @Test
  void leafBesideTheBoardIsNotHatched() {
    assertEquals(
        List.of(0, 0),
        List.of(hatchedPx(List.of()), hatchedPx(List.of(new Rectangle2D.Double(60, 0, 20, 40)))));
    // Stripes on the half of the leaf that lies on the board: 10 x 20 px, and the tint between.
    assertEquals(200, hatchedPx(List.of(new Rectangle2D.Double(0, 0, 20, 40))));
  }

  /** Counts pixels changed by hatching a leaf of 20 x 20 px of no site, in 40 x 40. */
  private static int hatchedPx(List<java.awt.Shape> boards) {
    int size = 40;
    byte[] coverage = new byte[size * size];
    for (int y = 10; y < 30; y++) {
      java.util.Arrays.fill(coverage, y * size + 10, y * size + 30, (byte) 255);
    }
    BufferedImage picture = new BufferedImage(size, size, BufferedImage.TYPE_INT_RGB);
    Leftover.hatch(
        picture,
        new CanopyMap(size, size, coverage, new short[size * size]),
        new Scale(1, size, size),
        boards);
    int changed = 0;
    for (int i = 0; i < size * size; i++) {
      changed += (picture.getRGB(i % size, i / size) & 0xffffff) != 0 ? 1 : 0;
    }
    return changed;
  }

  @Test
  void canopyOfNoSiteIsHatched() {
    PhotoResult result = photo("rafts=R1 area=20");
    CanopyMap canopy = result.canopy().get();
    CanopyMap ownerless =
        new CanopyMap(
            canopy.width(), canopy.height(), canopy.coverage(), new short[canopy.owner().length]);
    BufferedImage picture =
        Overlay.of(
            new PhotoResult(
                result.measure(), result.picture(), Optional.of(ownerless), result.drawings()),
            farm);

    int strong = 0;
    int weak = 0;
    for (int x = MIDDLE - 60; x < MIDDLE + 60; x++) {
      int red = new Color(picture.getRGB(x, MIDDLE - 70)).getRed();
      strong += red > 170 ? 1 : 0;
      weak += red < 100 ? 1 : 0;
    }
    // Stripes of 5 in 12 px.
    assertEquals(50, strong, 1);
    assertEquals(70, weak, 1);
  }

  @Test
  void theBoardHasAWhiteFrame() {
    BufferedImage picture = Overlay.of(photo("rafts=R1 area=20"), farm);

    assertEquals(Color.WHITE, new Color(picture.getRGB(42, 700)));
    assertEquals(Color.WHITE, new Color(picture.getRGB(700, 1162)));
  }

  @Test
  void aPictureWithoutRaftsSaysWhyInItsCaption() {
    PhotoResult result = photo("status=refused reason=too_dark remedy=switch_on_the_light");

    List<List<String>> caption = Caption.of(result.measure(), farm);
    BufferedImage picture = Overlay.of(result, farm);

    assertEquals(
        List.of("REFUSED: too dark", "switch on the light"), caption.get(caption.size() - 1));
    assertTrue(picture.getHeight() > 1200);
  }

  @Test
  void theCaptionNamesRaftEveningAgeScaleAndPose() {
    PhotoResult result = photo("rafts=R1 area=20 at=2026-04-12T00:20:00+01:00");

    List<List<String>> caption = Caption.of(result.measure(), farm);

    assertEquals(List.of("a.jpg", "taken 2026-04-12 00:20", "station bench"), caption.get(0));
    assertEquals(
        List.of(
            "Raft R1",
            "evening 2026-04-11",
            "DAT 6.0",
            "0.500 mm/px",
            "place from markers \u00b1 0.4 mm",
            "cover 25.0 %",
            "leaf 60 cm\u00b2",
            "of no site 1.5 cm\u00b2"),
        caption.get(1));
  }

  @Test
  void aPoseErrorThatWouldShowAsNothingIsNotSaid() {
    PhotoResult result = photo("rafts=R1 area=20 pose_error=0.04");

    assertTrue(Caption.of(result.measure(), farm).get(1).contains("place from markers"));
  }

  @Test
  void noLineOfTheCaptionRunsIntoThePicturesEdge() {
    String part = "of no site 35.8 cm\u00b2";
    for (int parts = 4; parts < 12; parts++) {
      int width = 1620;
      CaptionStrip strip =
          new CaptionStrip(List.of(java.util.Collections.nCopies(parts, part)), width);
      BufferedImage picture =
          new BufferedImage(width, strip.heightPx(), BufferedImage.TYPE_INT_RGB);
      try (Ink ink = new Ink(picture, 2)) {
        ink.cover(0, strip.heightPx());
        strip.draw(ink, 0);
      }
      for (int y = 0; y < strip.heightPx(); y++) {
        for (int x = width - 12; x < width; x++) {
          assertEquals(Palette.STRIP.getRGB(), picture.getRGB(x, y), "at " + x + ", " + y);
        }
      }
    }
  }

  @Test
  void areasAreWrittenToAboutThreeDigits() {
    assertEquals("0", SiteMarks.area(HandMadeMeasurer.site("A1", 0)));
    assertEquals("9.9", SiteMarks.area(HandMadeMeasurer.site("A1", 9.88)));
    assertEquals("235", SiteMarks.area(HandMadeMeasurer.site("A1", 234.6)));
    assertEquals("\u2265235", SiteMarks.area(HandMade.closed(HandMadeMeasurer.site("A1", 234.6))));
    SiteMeasure open = HandMadeMeasurer.site("A1", 9.88);
    assertEquals("~9.9", SiteMarks.area(HandMade.touching(open)));
    assertEquals("?", SiteMarks.area(HandMade.held(HandMadeMeasurer.site("A1", 5), "unsure")));
  }

  @Test
  void neighboursOnAGridHaveOtherColours() {
    for (int row = -1; row <= 1; row++) {
      for (int column = -1; column <= 1; column++) {
        if (row != 0 || column != 0) {
          assertNotEquals(Palette.site(5, 5), Palette.site(5 + row, 5 + column));
        }
      }
    }
  }

  @Test
  void outlinesFollowThePixelsAndTheirHoles() {
    // A ring of 12 x 12 px with a hole of 4 x 4 px: two loops; drawn at the photo's size.
    int size = 20;
    byte[] coverage = new byte[size * size];
    short[] owner = new short[size * size];
    for (int y = 4; y < 16; y++) {
      for (int x = 4; x < 16; x++) {
        boolean hole = x >= 8 && x < 12 && y >= 8 && y < 12;
        owner[y * size + x] = 7;
        coverage[y * size + x] = (byte) (hole ? 100 : 200);
      }
    }
    Map<Integer, Path2D> outlines =
        new Outlines(new CanopyMap(size, size, coverage, owner), new Scale(1, size, size)).trace();

    assertEquals(1, outlines.size());
    Path2D outline = outlines.get(7);
    Rectangle2D bounds = outline.getBounds2D();
    assertEquals(new Rectangle2D.Double(4, 4, 12, 12), bounds);
    assertTrue(outline.contains(6, 10));
    assertTrue(!outline.contains(10, 10), "the hole");
  }

  @Test
  void closeSitesAreDrawnLarger() {
    RgbImage photo = RgbImage.of(4000, 3000, new byte[3 * 4000 * 3000]);
    PhotoResult.RaftDrawing close =
        new PhotoResult.RaftDrawing(
            List.of(),
            List.of(
                new org.raftgauge.core.pixels.PointPx(0, 0),
                new org.raftgauge.core.pixels.PointPx(100, 0)),
            List.of());

    assertEquals(2000, Scale.of(photo, List.of()).width());
    // 120 px between sites that are 100 apart would be 4800: the limit.
    assertEquals(4000, Scale.of(photo, List.of(close)).width());
    // A small photo of close sites is enlarged: 120 / 20 of 600 px.
    RgbImage small = RgbImage.of(600, 400, new byte[3 * 600 * 400]);
    PhotoResult.RaftDrawing cells =
        new PhotoResult.RaftDrawing(
            List.of(),
            List.of(
                new org.raftgauge.core.pixels.PointPx(0, 0),
                new org.raftgauge.core.pixels.PointPx(20, 0)),
            List.of());
    assertEquals(3600, Scale.of(small, List.of(cells)).width());
  }

  private static PhotoResult photo(String text) {
    String at = text.contains("at=") ? "" : " at=2026-04-11T18:00:00+01:00";
    return new HandMadeMeasurer("s")
        .measure((text + at).getBytes(StandardCharsets.UTF_8), PhotoFacts.of("a.jpg"));
  }

  private static PhotoResult with(
      String text, java.util.function.UnaryOperator<SiteMeasure> change) {
    PhotoResult result = photo(text);
    RaftMeasure raft = result.measure().rafts().get(0);
    List<SiteMeasure> sites = raft.sites().stream().map(change).toList();
    return new PhotoResult(
        HandMade.withRaft(result.measure(), raft.withSites(sites)),
        result.picture(),
        result.canopy(),
        result.drawings());
  }

  /** Returns the share of directions in which a colour is met within 3 px of a ring. */
  private static double ring(BufferedImage picture, int x, int y, int radius, Color colour) {
    int met = 0;
    for (int degree = 0; degree < 360; degree++) {
      double angle = Math.toRadians(degree);
      boolean found = false;
      for (int r = radius - 3; r <= radius + 3; r++) {
        Color at =
            new Color(
                picture.getRGB(
                    (int) Math.round(x + r * Math.cos(angle)),
                    (int) Math.round(y + r * Math.sin(angle))));
        found |=
            Math.abs(at.getRed() - colour.getRed())
                    + Math.abs(at.getGreen() - colour.getGreen())
                    + Math.abs(at.getBlue() - colour.getBlue())
                < 30;
      }
      met += found ? 1 : 0;
    }
    return met / 360.0;
  }
}
