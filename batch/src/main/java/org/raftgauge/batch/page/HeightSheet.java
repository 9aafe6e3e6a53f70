// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.raftgauge.core.measure.CanopyMap;
import org.raftgauge.core.measure.HeightPicture;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Draws the heights of a photo's leaf: the photo in grey, leaf coloured by height from dark blue to
 * yellow, leaf whose height nobody saw hatched, each plant's mean height in mm on it.
 */
final class HeightSheet {
  private static final int CANOPY = 128;

  /** The colours end at the height that this share of leaf does not reach over. */
  private static final double NEARLY_ALL = 0.99;

  private static final int STEP_MM = 25;
  private static final int TICKS = 5;

  private final HeightPicture heights;
  private final CanopyMap canopy;
  private final Scale scale;
  private final int mostMm;

  private HeightSheet(HeightPicture heights, CanopyMap canopy, Scale scale) {
    this.heights = heights;
    this.canopy = canopy;
    this.scale = scale;
    this.mostMm = mostMm();
  }

  /**
   * Draws.
   *
   * @param result a measured photo with heights
   * @return the picture, its legend below it
   */
  static BufferedImage of(PhotoResult result) {
    RgbImage photo = result.picture().orElseThrow();
    Scale scale = Scale.of(photo, result.drawings());
    HeightSheet sheet =
        new HeightSheet(result.heights().orElseThrow(), result.canopy().orElseThrow(), scale);
    Font font =
        new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont(Math.max(14f, scale.width() / 50f));
    int strip = Math.round(4.4f * font.getSize2D());
    BufferedImage picture = BasePicture.of(photo, scale, strip);
    sheet.colour(picture);
    try (Ink ink = new Ink(picture, 2)) {
      ink.cover(scale.height(), strip);
      sheet.plants(ink, result, font);
      sheet.legend(ink, font);
    }
    return picture;
  }

  private int mostMm() {
    List<Double> leaf = new ArrayList<>();
    short[] owner = canopy.owner();
    for (int i = 0; i < owner.length; i++) {
      if (owner[i] != 0 && heights.seen(i)) {
        leaf.add(heights.mm(i));
      }
    }
    leaf.sort(Double::compare);
    double most = leaf.isEmpty() ? 1 : leaf.get((int) (NEARLY_ALL * (leaf.size() - 1)));
    return Math.max(STEP_MM, (int) Math.ceil(most / STEP_MM) * STEP_MM);
  }

  private void colour(BufferedImage picture) {
    int[] rgb = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
    byte[] coverage = canopy.coverage();
    short[] owner = canopy.owner();
    for (int y = 0; y < scale.height(); y++) {
      int row = (int) ((long) y * canopy.height() / scale.height()) * canopy.width();
      for (int x = 0; x < scale.width(); x++) {
        int i = row + (int) ((long) x * canopy.width() / scale.width());
        int at = y * picture.getWidth() + x;
        boolean leaf = owner[i] != 0 && (coverage[i] & 0xff) >= CANOPY;
        int grey = grey(rgb[at]);
        rgb[at] = !leaf ? grey : heights.seen(i) ? shaded(i, grey) : Leftover.hatched(grey, x, y);
      }
    }
  }

  private static int grey(int rgb) {
    int luma = (299 * ((rgb >> 16) & 0xff) + 587 * ((rgb >> 8) & 0xff) + 114 * (rgb & 0xff)) / 1000;
    int dimmed = 30 + luma / 2;
    return (dimmed << 16) | (dimmed << 8) | dimmed;
  }

  /** The height's colour, a little of the leaf's own light and shade in it. */
  private int shaded(int i, int grey) {
    Color colour = Ramp.at(heights.mm(i) / mostMm);
    double light = 0.8 + 0.4 * ((grey & 0xff) - 30) / 128.0;
    return (part(colour.getRed(), light) << 16)
        | (part(colour.getGreen(), light) << 8)
        | part(colour.getBlue(), light);
  }

  private static int part(int level, double light) {
    return (int) Math.min(255, Math.round(level * light));
  }

  private void plants(Ink ink, PhotoResult result, Font font) {
    Font small = font.deriveFont(0.9f * font.getSize2D());
    for (int place = 0; place < result.drawings().size(); place++) {
      List<SiteMeasure> sites = result.measure().rafts().get(place).sites();
      for (int s = 0; s < sites.size(); s++) {
        boolean seen = !sites.get(s).relief().isEmpty();
        boolean leaf = sites.get(s).projectedAreaCm2().orElse(0) > 0;
        String text =
            seen ? String.format(Locale.ROOT, "%.0f", sites.get(s).heightMm()) : leaf ? "?" : "";
        if (!text.isEmpty()) {
          ink.text(text, scale.at(result.drawings().get(place).plantCentresPx().get(s)), small);
        }
      }
    }
  }

  private void legend(Ink ink, Font font) {
    double em = font.getSize2D();
    double top = scale.height() + 0.7 * em;
    double left = em;
    double width = scale.width() - 2 * em;
    int strips = 120;
    for (int k = 0; k < strips; k++) {
      ink.patch(
          new Rectangle2D.Double(left + k * width / strips, top, width / strips + 1, em),
          Ramp.at((k + 0.5) / strips));
    }
    for (int tick = 0; tick <= TICKS; tick++) {
      String text =
          String.format(Locale.ROOT, tick == TICKS ? "%d mm" : "%d", mostMm * tick / TICKS);
      double at = left + width * tick / TICKS - ink.widthPx(text, font) * tick / TICKS;
      ink.plainText(text, new Point2D.Double(at, top + 2.1 * em), font);
    }
    ink.plainText(
        "height over the deck; on each plant its mean; hatched: leaf that no height was seen of",
        new Point2D.Double(left, top + 3.4 * em),
        font.deriveFont((float) (0.82 * em)));
  }
}
