// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.TagPlace;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.set.MakePhoto.Made;
import org.raftgauge.proving.solid.Placement;

/** Writes the crop book that goes with a set. */
final class BookFiles {
  private final Path book;
  private final List<Made> made;

  private BookFiles(Path book, List<Made> made) {
    this.book = book;
    this.made = made;
  }

  /** Writes the whole book into a folder. */
  static void write(Path book, List<Made> made) throws IOException {
    BookFiles files = new BookFiles(book, made);
    Files.createDirectories(book.resolve("stations"));
    files.write(
        "book.yaml",
        List.of(
            "time_zone: UTC",
            "day_starts_at: \"04:00\"",
            "station: " + made.get(0).plan().station().name(),
            "photo_name: \"{date}_{raft}\"",
            "units: metric"));
    files.stations();
    files.layouts();
    files.crops();
    files.plantings();
    files.placements();
  }

  private void write(String name, List<String> lines) throws IOException {
    Files.writeString(book.resolve(name), String.join("\n", lines) + "\n");
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  private void stations() throws IOException {
    Map<String, StationPlan> stations = new TreeMap<>();
    made.forEach(photo -> stations.put(photo.plan().station().name(), photo.plan().station()));
    for (StationPlan station : stations.values()) {
      Lens lens = station.lens();
      List<String> lines =
          new ArrayList<>(
              List.of(
                  "kind: " + (station.fixed() ? "fixed" : "passing"),
                  "cameras: 1",
                  "image_width_px: " + station.widthPx(),
                  "image_height_px: " + station.heightPx(),
                  line(
                      "lens: {fx_px: %.4f, fy_px: %.4f, cx_px: %.3f, cy_px: %.3f, k1: %.6f, k2: %.6f, p1: %.6f,"
                          + " p2: %.6f, k3: %.6f}",
                      lens.fxPx(),
                      lens.fyPx(),
                      lens.cxPx(),
                      lens.cyPx(),
                      lens.k1(),
                      lens.k2(),
                      lens.p1(),
                      lens.p2(),
                      lens.k3()),
                  line("camera_height_mm: %.1f", station.hold().heightMm())));
      if (station.fixed()) {
        lines.add("slots:");
        for (int i = 0; i < station.places().size(); i++) {
          lines.add(slot(station, i));
        }
      }
      write("stations/" + station.name() + ".yaml", lines);
    }
  }

  /** A slot's corners as they lie in the reference photo: the camera in its usual place. */
  private static String slot(StationPlan station, int index) {
    Camera camera = station.camera();
    Placement place = station.places().get(index);
    Layout layout = station.layout(0);
    double w = layout.board().widthMm();
    double l = layout.board().lengthMm();
    List<String> corners = new ArrayList<>();
    for (double[] corner : new double[][] {{0, 0}, {w, 0}, {w, l}, {0, l}}) {
      double[] at =
          camera.project(place.worldX(corner[0], corner[1]), place.worldY(corner[0], corner[1]), 0);
      corners.add(line("[%.1f, %.1f]", at[0], at[1]));
    }
    return line(
        "  - {name: S%d, layout: %s, corners_px: [%s], refine: edges}",
        index + 1, layout.name(), String.join(", ", corners));
  }

  private void layouts() throws IOException {
    List<String> lines = new ArrayList<>(List.of("layouts:"));
    for (Layout layout : Boards.all()) {
      SiteGrid g = layout.grid();
      lines.add("  " + layout.name() + ":");
      lines.add(
          line(
              "    board: {width_mm: %.0f, length_mm: %.0f}",
              layout.board().widthMm(), layout.board().lengthMm()));
      lines.add(
          line(
              "    sites: {rows: %d, columns: %d, first_x_mm: %.0f, first_y_mm: %.0f,"
                  + " pitch_x_mm: %.0f, pitch_y_mm: %.0f, stagger_x_mm: %.0f}",
              g.rows(),
              g.columns(),
              g.firstXMm(),
              g.firstYMm(),
              g.pitchXMm(),
              g.pitchYMm(),
              g.staggerXMm()));
      layout.markers().ifPresent(markers -> lines.add(markers(markers)));
      layout.tag().ifPresent(tag -> lines.add(tag(tag)));
    }
    write("layouts.yaml", lines);
  }

  private static String markers(CornerMarkers markers) {
    List<String> centres = new ArrayList<>();
    for (PointMm centre : markers.centresMm()) {
      centres.add(line("[%.0f, %.0f]", centre.xMm(), centre.yMm()));
    }
    return line(
        "    markers: {family: tag36h11, side_mm: %.0f, centres_mm: [%s]}",
        markers.sideMm(), String.join(", ", centres));
  }

  private static String tag(TagPlace tag) {
    return line(
        "    tag: {x_mm: %.0f, y_mm: %.0f, side_mm: %.0f}", tag.xMm(), tag.yMm(), tag.sideMm());
  }

  private void crops() throws IOException {
    Map<CropKind, List<SitePoint>> points = new TreeMap<>();
    for (Made photo : made) {
      points.computeIfAbsent(photo.plan().crop(), key -> new ArrayList<>()).addAll(photo.sites());
    }
    List<String> lines = new ArrayList<>(List.of("crops:"));
    points.forEach(
        (crop, sites) -> {
          HeightFit fit = HeightFit.fit(sites);
          lines.add("  " + crop.crop() + ":");
          lines.add("    colour_model: " + crop.colourModel());
          lines.add(
              line(
                  "    height_model: {scale_mm: %.4f, exponent: %.4f, mean_to_top: %.3f}",
                  fit.scaleMm(), fit.exponent(), fit.meanToTop()));
          lines.add("    emerged_by_das: 7");
          lines.add("    limits: {lagging_share: 0.78, ahead_share: 1.35, closed_outline: 0.35}");
        });
    write("crops.yaml", lines);
  }

  /** A row for each raft, however often it is photographed. */
  private void plantings() throws IOException {
    Set<String> lines = new LinkedHashSet<>();
    lines.add(
        "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot");
    for (Made photo : made) {
      LocalDate transplanted = photo.plan().date().minusDays(photo.plan().dat());
      String pond = photo.plan().station().fixed() ? "P2" : "P1";
      for (Raft raft : photo.rafts()) {
        lines.add(
            String.join(
                ",",
                raft.id(),
                pond,
                "",
                photo.plan().crop().crop(),
                "",
                raft.layout().name(),
                "",
                transplanted.minusDays(14).toString(),
                transplanted.toString(),
                "",
                "",
                ""));
      }
    }
    write("plantings.csv", List.copyOf(lines));
  }

  private void placements() throws IOException {
    List<String> lines = new ArrayList<>(List.of("station,slot,raft,from,to"));
    for (Made photo : made) {
      if (photo.plan().station().fixed()) {
        for (int i = 0; i < photo.rafts().size(); i++) {
          lines.add(
              String.join(
                  ",",
                  photo.plan().station().name(),
                  "S" + (i + 1),
                  photo.rafts().get(i).id(),
                  photo.plan().date().toString(),
                  photo.plan().date().plusDays(1).toString()));
        }
      }
    }
    write("placements.csv", lines);
  }
}
