// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.DrawnPhoto;
import org.raftgauge.core.site.SiteMeasure;

/** Photos of good plants that would be measured, and wrongly. */
class MisleadingPhotoTest {
  /** Lettuce in linear light (IEC 61966-2-1). */
  private static final double[] LEAF = {0.117, 0.296, 0.034};

  @TempDir private Path folder;

  private PhotoMeasure measure(byte[] png) {
    return MeasurePhoto.measure(
            png, DrawnFarm.manifest(DrawnFarm.NAME, "bench", ""), DrawnFarm.book(folder))
        .measure();
  }

  private static DrawnPhoto plants(double besideMm) {
    DrawnPhoto photo = DrawnPhoto.upright().tagged("DR-1");
    for (int i = 0; i < 18; i++) {
      photo.disc(120 + 180 * (i % 3) + besideMm, 150 + 180 * Math.floorDiv(i, 3), 40, LEAF);
    }
    return photo;
  }

  private static RgbImage pixels(BufferedImage image) {
    byte[] rgb = new byte[3 * image.getWidth() * image.getHeight()];
    for (int i = 0; i < rgb.length; i++) {
      int at = i / 3;
      int pixel = image.getRGB(at % image.getWidth(), at / image.getWidth());
      rgb[i] = (byte) (pixel >> (16 - 8 * (i % 3)));
    }
    return RgbImage.of(image.getWidth(), image.getHeight(), rgb);
  }

  /** Takes colour away: each channel keeps a share of its distance from their mean. */
  private static byte[] faded(RgbImage image, double share) throws IOException {
    byte[] rgb = image.rgb().clone();
    for (int i = 0; i < rgb.length; i += 3) {
      double mean = ((rgb[i] & 0xff) + (rgb[i + 1] & 0xff) + (rgb[i + 2] & 0xff)) / 3.0;
      for (int c = i; c < i + 3; c++) {
        rgb[c] = (byte) Math.round(mean + share * ((rgb[c] & 0xff) - mean));
      }
    }
    return DrawnFarm.png(RgbImage.of(image.width(), image.height(), rgb));
  }

  @Test
  void aPhotoOfPaleColoursIsRefusedAndNotReadAsAnEmptyBoard() throws IOException {
    BufferedImage drawn = ImageIO.read(new ByteArrayInputStream(plants(0).png()));
    RgbImage photo = pixels(drawn);
    assertEquals(PhotoStatus.USED, measure(faded(photo, 1)).status());
    assertFalse(Greyness.isGrey(photo), "a few per cent of colour are no grey picture");
    PhotoMeasure pale = measure(faded(photo, 0.15));
    assertEquals(PhotoStatus.REFUSED, pale.status());
    assertEquals("the photo has so little colour that leaf would pass for board", pale.reason());
    assertTrue(pale.rafts().isEmpty());
  }

  /** As a lamp of 2700 K makes it that the camera does not balance. */
  @Test
  void anEmptyBoardInWarmLightIsNoPalePhoto() throws IOException {
    DrawnPhoto bare = DrawnPhoto.upright().tagged("DR-1");
    byte[] rgb = pixels(ImageIO.read(new ByteArrayInputStream(bare.png()))).rgb().clone();
    for (int i = 2; i < rgb.length; i += 3) {
      rgb[i] = (byte) Math.round(0.82 * (rgb[i] & 0xff));
    }
    RgbImage whole = pixels(ImageIO.read(new ByteArrayInputStream(bare.png())));
    RgbImage warm = RgbImage.of(whole.width(), whole.height(), rgb);
    assertEquals(PhotoStatus.USED, measure(DrawnFarm.png(warm)).status());
  }

  @Test
  void plantsBesideTheirHolesAreHeldAndThoseThatLeanAreNot() {
    // A layout whose first hole is a sixth of the pitch off still gives each plant to its site.
    assertEquals("", measure(plants(30).png()).rafts().get(0).held());
    RaftMeasure beside = measure(plants(55).png()).rafts().get(0);
    assertEquals("the plants stand beside the planting holes of layout deck-18", beside.held());
    for (SiteMeasure site : beside.sites()) {
      assertTrue(site.projectedAreaCm2().isEmpty(), site.site().toString());
    }
  }

  @Test
  void inStaggeredRowsAnEighthOfThePitchIsTooMuch() {
    for (double staggerMm : new double[] {0, 60}) {
      SiteGrid grid = new SiteGrid(2, 3, 80, 80, 120, 120, staggerMm);
      List<SiteMeasure> sites =
          grid.sites().stream().map(site -> beside(site, 18)).collect(Collectors.toList());
      assertEquals(staggerMm > 0, BesideHoles.stand(sites, grid));
      assertFalse(BesideHoles.stand(sites.subList(0, 4), grid), "four plants may lean");
    }
  }

  /** A black sheet reflects some 2 to 5 % of the light (common practice, no source). */
  @Test
  void plantsUnderABlackSheetAreHeldAndNotEmpty() {
    double[] sheet = {0.03, 0.03, 0.03};
    PhotoMeasure photo = measure(plants(0).disc(300, 780, 270, sheet).png());
    for (SiteMeasure site : photo.rafts().get(0).sites()) {
      boolean under = site.site().row() == 3 || site.site().row() == 4;
      String why =
          "something dark that is no leaf of its crop lies over it; see what it is, take it away and"
              + " photograph it again";
      assertEquals(under ? why : "", site.held(), site.site().toString());
      assertEquals(!under, site.projectedAreaCm2().isPresent());
    }
  }

  @Test
  void emptyHolesThatShowAreEmpty() {
    DrawnPhoto bare = DrawnPhoto.upright().tagged("DR-1");
    for (SiteMeasure site : measure(bare.png()).rafts().get(0).sites()) {
      assertEquals(0, site.projectedAreaCm2().orElseThrow(), 0.01, site.site().toString());
    }
  }

  private static SiteMeasure beside(SiteId site, double offsetMm) {
    return new SiteMeasure(
        site,
        OptionalDouble.of(30),
        OptionalDouble.of(1),
        OptionalDouble.of(30),
        false,
        0,
        20,
        1,
        List.of(new SiteMeasure.Shape(62, 70, 220, 0.9, offsetMm, 0)),
        List.of(),
        1,
        "");
  }
}
