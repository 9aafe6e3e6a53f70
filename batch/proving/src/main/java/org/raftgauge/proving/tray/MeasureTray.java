// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.tray;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.track.JudgeTrays;
import org.raftgauge.core.track.Tray;

/** Measures and judges a tray's photos as the program does. */
final class MeasureTray {
  private static final String STATION = "tray-bench";

  private final TrayPlan plan;
  private final CropBook book;
  private final List<SiteLook> looks = new ArrayList<>();
  private final List<String> refused = new ArrayList<>();

  private MeasureTray(TrayPlan plan, CropBook book) {
    this.plan = plan;
    this.book = book;
  }

  /**
   * What the program says of a tray.
   *
   * @param tray after the last photo
   * @param looks at its cells, photo by photo
   * @param refused why photos were not measured
   */
  record Said(Tray tray, List<SiteLook> looks, List<String> refused) {}

  /** Photographs, measures and judges a tray. */
  static Said of(TrayPlan plan, List<Integer> days, Path work) throws IOException {
    Path folder = work.resolve(plan.name() + "-book");
    writeBook(folder, plan);
    MeasureTray measure = new MeasureTray(plan, CropBook.read(folder).book());
    for (int day : days) {
      measure.photo(PhotographTray.take(plan, day, work.resolve("photos")), day);
    }
    LocalDate last = TrayPlan.SOWN_ON.plusDays(days.get(days.size() - 1));
    Tray tray =
        JudgeTrays.judge(
                measure.book, CollectSeries.withEnded(measure.book, measure.looks, last), last)
            .get(plan.name());
    if (tray == null) {
      throw new IOException("nothing was measured of " + plan.name() + ": " + measure.refused);
    }
    return new Said(tray, measure.looks, measure.refused);
  }

  private void photo(byte[] jpeg, int day) {
    String name = plan.name() + "/" + day + ".jpg";
    PhotoFacts facts =
        new PhotoFacts(
            name,
            Optional.of(TrayPlan.SOWN_ON.plusDays(day) + "T18:00:00+00:00"),
            Optional.of(STATION),
            Optional.empty(),
            Optional.empty());
    PhotoMeasure photo = MeasurePhoto.measure(jpeg, facts, book).measure();
    if (photo.rafts().isEmpty()) {
      refused.add("day " + day + ": " + photo.reason());
    }
    for (RaftMeasure raft : photo.rafts()) {
      if (!raft.held().isEmpty()) {
        refused.add("day " + day + ": " + raft.held());
      }
      raft.sites()
          .forEach(
              site ->
                  looks.add(
                      new SiteLook(
                          name,
                          STATION,
                          raft.raft().orElse(""),
                          photo.takenAt().orElseThrow(),
                          site)));
    }
  }

  private static void writeBook(Path book, TrayPlan plan) throws IOException {
    Files.createDirectories(book.resolve("stations"));
    write(
        book.resolve("book.yaml"),
        "time_zone: UTC\nday_starts_at: \"04:00\"\nstation: " + STATION + "\nunits: metric\n");
    write(book.resolve("layouts.yaml"), layouts(plan));
    write(
        book.resolve("crops.yaml"),
        "crops:\n  butterhead:\n    colour_model: green-leaf\n    height_model: {scale_mm: 9,"
            + " exponent: 0.5}\n    emerged_by_das: 7\n");
    write(
        book.resolve("plantings.csv"),
        "raft,crop,layout,sown_on\n"
            + String.join(
                ",", plan.name(), "butterhead", plan.layout().name(), "" + TrayPlan.SOWN_ON)
            + "\n");
    write(book.resolve("stations").resolve(STATION + ".yaml"), station());
  }

  private static String layouts(TrayPlan plan) {
    SiteGrid g = plan.layout().grid();
    StringBuilder centres = new StringBuilder();
    for (PointMm c : plan.layout().markers().orElseThrow().centresMm()) {
      centres.append(centres.isEmpty() ? "" : ", ");
      centres.append(line("[%.0f, %.0f]", c.xMm(), c.yMm()));
    }
    return line(
            "layouts:\n  %s:\n    board: {width_mm: %.0f, length_mm: %.0f}\n",
            plan.layout().name(), plan.layout().board().widthMm(), plan.layout().board().lengthMm())
        + line(
            "    sites: {rows: %d, columns: %d, first_x_mm: %.1f, first_y_mm: %.1f, pitch_x_mm:"
                + " %.1f, pitch_y_mm: %.1f}\n",
            g.rows(), g.columns(), g.firstXMm(), g.firstYMm(), g.pitchXMm(), g.pitchYMm())
        + line(
            "    markers: {family: tag36h11, side_mm: %.0f, centres_mm: [%s]}\n",
            plan.layout().markers().orElseThrow().sideMm(), centres)
        + line(
            "    tag: {x_mm: %.0f, y_mm: %.0f, side_mm: %.0f}\n",
            plan.layout().tag().orElseThrow().xMm(),
            plan.layout().tag().orElseThrow().yMm(),
            plan.layout().tag().orElseThrow().sideMm());
  }

  private static String station() {
    Lens lens = PhotographTray.lens();
    return line(
        "kind: passing\ncameras: 1\nimage_width_px: %d\nimage_height_px: %d\nlens: {fx_px: %.4f,"
            + " fy_px: %.4f, cx_px: %.3f, cy_px: %.3f, k1: %.6f, k2: %.6f, p1: %.6f, p2: %.6f,"
            + " k3: %.6f}\ncamera_height_mm: %.1f\n",
        PhotographTray.WIDTH_PX,
        PhotographTray.HEIGHT_PX,
        lens.fxPx(),
        lens.fyPx(),
        lens.cxPx(),
        lens.cyPx(),
        lens.k1(),
        lens.k2(),
        lens.p1(),
        lens.p2(),
        lens.k3(),
        PhotographTray.HEIGHT_MM);
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  private static void write(Path file, String text) throws IOException {
    Files.writeString(file, text);
  }
}
