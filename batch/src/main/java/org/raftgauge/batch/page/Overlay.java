// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.site.SiteMeasure;

/** Draws the overlay of a photo: the picture that proves its numbers. */
final class Overlay {

  private Overlay() {}

  /**
   * Draws.
   *
   * @param result a measured photo that could be read
   * @param farm the book, for what is planted and how old it is
   * @return the photo with outlines, names, areas, board frames, caption and legend
   */
  static BufferedImage of(PhotoResult result, Farm farm) {
    RgbImage photo = result.picture().orElseThrow();
    Scale scale = Scale.of(photo, result.drawings());
    CaptionStrip strip = new CaptionStrip(Caption.of(result.measure(), farm), scale.width());
    BufferedImage picture = BasePicture.of(photo, scale, strip.heightPx());
    List<Sheet> sheets = sheets(result, farm);
    List<Shape> counted =
        sheets.stream()
            .filter(sheet -> sheet.raft().leftoverCanopyCm2().isPresent())
            .map(sheet -> (Shape) sheet.frame(scale))
            .toList();
    result.canopy().ifPresent(canopy -> Leftover.hatch(picture, canopy, scale, counted));
    double pitchPx = Scale.pitchPx(result.drawings());
    try (Ink ink = new Ink(picture, linePx(pitchPx * scale.factor()))) {
      marks(sheets, new SiteMarks(ink, scale, pitchPx, mostSites(sheets)), outlines(result, scale));
      ink.cover(scale.height(), strip.heightPx());
      strip.draw(ink, scale.height());
    }
    return picture;
  }

  private static int mostSites(List<Sheet> sheets) {
    return sheets.stream().mapToInt(sheet -> sheet.raft().sites().size()).max().orElse(0);
  }

  private static double linePx(double pitchPx) {
    return Math.max(1.5, Math.min(pitchPx / 60, 4));
  }

  private static Map<Integer, Path2D> outlines(PhotoResult result, Scale scale) {
    return result.canopy().map(canopy -> new Outlines(canopy, scale).trace()).orElse(Map.of());
  }

  private static List<Sheet> sheets(PhotoResult result, Farm farm) {
    List<Sheet> sheets = new ArrayList<>();
    for (int place = 0; place < result.drawings().size(); place++) {
      RaftMeasure raft = result.measure().rafts().get(place);
      Set<SiteId> planted = planted(result.measure(), raft, farm);
      sheets.add(new Sheet(place, raft, result.drawings().get(place), planted));
    }
    return sheets;
  }

  private static void marks(List<Sheet> sheets, SiteMarks marks, Map<Integer, Path2D> outlines) {
    sheets.forEach(marks::board);
    sheets.forEach(sheet -> marks.outlines(sheet, outlines));
    sheets.forEach(sheet -> marks.names(sheet, outlines));
    sheets.forEach(marks::raftName);
  }

  /** Returns the planted sites; all where nothing tells. */
  private static Set<SiteId> planted(PhotoMeasure photo, RaftMeasure raft, Farm farm) {
    Set<SiteId> planted = new HashSet<>();
    for (SiteMeasure site : raft.sites()) {
      if (raft.raft().isPresent()
          && photo.takenAt().isPresent()
          && farm.plantAt(raft.raft().get(), site.site(), photo.takenAt().get()).isPresent()) {
        planted.add(site.site());
      }
    }
    if (planted.isEmpty()) {
      raft.sites().forEach(site -> planted.add(site.site()));
    }
    return planted;
  }
}
