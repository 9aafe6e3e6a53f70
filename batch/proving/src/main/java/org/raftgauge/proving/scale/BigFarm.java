// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scale;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Origin;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * A farm of very many sites in full growth: rafts of 18 sites in eight cohorts that were set out a
 * day apart, photographed every evening. Ages on the last evening are 21.75 to 28.75 days, so that
 * the sites have 25 photos or so on average, less 5 % of rafts missed. One plant in twelve grows at
 * 30 to 90 % of the others' pace from some day on; the oldest close. Written straight into a
 * history, under hashes that are spread as those of photos are (times a large odd number).
 */
final class BigFarm {
  private static final SiteGrid GRID = new SiteGrid(6, 3, 120, 150, 180, 180, 0);
  private static final LocalDate FIRST = LocalDate.of(2027, 4, 5);
  private static final int COHORTS = 8;
  private static final int YOUNGEST = 21;
  private static final int RAFTS_A_POND = 50;
  private static final int PHOTOS_AT_ONCE = 2_000;
  private static final double MISSED = 0.05;
  private static final double SLOW = 1.0 / 12;
  private static final double CELL_CM2 = 300;

  private final int rafts;
  private final long seed;

  /**
   * @param sites wanted, rounded up to whole rafts
   * @param seed the same seed gives the same farm
   */
  BigFarm(int sites, long seed) {
    int each = GRID.sites().size();
    this.rafts = (sites + each - 1) / each;
    this.seed = seed;
  }

  /** Returns the number of sites. */
  int sites() {
    return rafts * GRID.sites().size();
  }

  /** Returns the last evening with photos. */
  static LocalDate evening() {
    return FIRST.plusDays(YOUNGEST + COHORTS - 1L);
  }

  /**
   * Writes the crop book and the history up to the evening before the last.
   *
   * @param book folder to write to
   * @throws IOException if it cannot be written
   */
  void write(Path book) throws IOException {
    Files.createDirectories(book.resolve("stations"));
    Files.writeString(book.resolve("stations").resolve("bench.yaml"), station());
    Files.writeString(
        book.resolve("book.yaml"),
        "time_zone: UTC\nday_starts_at: \"04:00\"\nstation: bench\nunits: metric\n");
    Files.writeString(book.resolve("layouts.yaml"), layouts());
    Files.writeString(book.resolve("crops.yaml"), crops());
    Files.writeString(book.resolve("plantings.csv"), plantings());
    save(book, FIRST, evening().minusDays(1));
  }

  /** Adds the photos of the last evening. */
  void writeLastEvening(Path book) throws IOException {
    save(book, evening(), evening());
  }

  private static String station() {
    return """
        kind: passing
        cameras: 1
        image_width_px: 2000
        image_height_px: 3000
        lens: {fx_px: 3000, fy_px: 3000, cx_px: 1000, cy_px: 1500}
        camera_height_mm: 1600
        """;
  }

  private static String layouts() {
    return """
        layouts:
          big-18:
            board: {width_mm: 600, length_mm: 1200}
            sites: {rows: 6, columns: 3, first_x_mm: 120, first_y_mm: 150, pitch_x_mm: 180, pitch_y_mm: 180}
            tag: {x_mm: 300, y_mm: 42, side_mm: 60}
        """;
  }

  private static String crops() {
    return """
        crops:
          batavia:
            colour_model: green-leaf
            height_model: {scale_mm: 5, exponent: 0.5}
        """;
  }

  private String plantings() {
    StringBuilder text =
        new StringBuilder(
            "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,"
                + "ended_on,lot\n");
    for (int raft = 0; raft < rafts; raft++) {
      text.append(id(raft))
          .append(",pond-")
          .append(raft / RAFTS_A_POND + 1)
          .append(",,batavia,,big-18,,,")
          .append(FIRST.plusDays(startDay(raft)))
          .append(",,,\n");
    }
    return text.toString();
  }

  private static String id(int raft) {
    return String.format(Locale.ROOT, "BR-%06d", raft + 1);
  }

  private static int startDay(int raft) {
    return raft % COHORTS;
  }

  private void save(Path book, LocalDate from, LocalDate to) throws IOException {
    try (History history = History.open(book.resolve("history.db"))) {
      List<Kept> waiting = new ArrayList<>();
      for (int raft = 0; raft < rafts; raft++) {
        for (PhotoMeasure photo : photos(raft, from, to)) {
          waiting.add(Kept.fresh(photo, new Origin("invented", "scale", "scale", "scale")));
        }
        if (waiting.size() >= PHOTOS_AT_ONCE || raft == rafts - 1) {
          history.save(waiting);
          waiting.clear();
        }
      }
    }
  }

  private List<PhotoMeasure> photos(int raft, LocalDate from, LocalDate to) {
    Random random = new Random(31 * seed + raft);
    Plant[] plants = new Plant[GRID.sites().size()];
    for (int i = 0; i < plants.length; i++) {
      plants[i] = Plant.draw(random);
    }
    List<PhotoMeasure> photos = new ArrayList<>();
    LocalDate start = FIRST.plusDays(startDay(raft));
    for (int age = 0; !start.plusDays(age).isAfter(evening()); age++) {
      LocalDate day = start.plusDays(age);
      double weather = new Random(seed + day.toEpochDay()).nextGaussian() * 0.02;
      boolean missed = random.nextDouble() < MISSED;
      List<SiteMeasure> sites = new ArrayList<>();
      for (int i = 0; i < plants.length; i++) {
        plants[i] = age == 0 ? plants[i] : plants[i].grown(age, weather);
        sites.add(site(GRID.sites().get(i), plants[i], random));
      }
      if (!missed && !day.isBefore(from) && !day.isAfter(to)) {
        photos.add(photo(raft, day, sites));
      }
    }
    return photos;
  }

  /** A plant: ln(area), and the share of the others' pace at which it grows from an age on. */
  private record Plant(double ln, double pace, double onset) {
    static Plant draw(Random random) {
      boolean slow = random.nextDouble() < SLOW;
      return new Plant(
          Math.log(7) + 0.18 * random.nextGaussian(),
          slow ? 0.3 + 0.6 * random.nextDouble() : 1,
          3 + 15 * random.nextDouble());
    }

    Plant grown(int age, double weather) {
      double rate = Math.max(0.003, 0.045 + 0.195 * Math.exp(-age / 9.0) + weather);
      return new Plant(ln + (age > onset ? pace : 1) * rate, pace, onset);
    }
  }

  private static SiteMeasure site(SiteId site, Plant plant, Random random) {
    double area = Math.exp(plant.ln());
    double seen = Math.min(area, CELL_CM2) * Math.exp(0.03 * random.nextGaussian());
    return new SiteMeasure(
        site,
        OptionalDouble.of(seen),
        OptionalDouble.of(Math.hypot(0.15, 0.03 * seen)),
        OptionalDouble.of(seen),
        area > 0.8 * CELL_CM2,
        0,
        0,
        1,
        List.of(),
        List.of(),
        1,
        "");
  }

  private static PhotoMeasure photo(int raft, LocalDate day, List<SiteMeasure> sites) {
    String name = id(raft) + "-" + day;
    RaftMeasure board =
        new RaftMeasure(
            Optional.of(id(raft)),
            "",
            "big-18",
            PoseSource.MARKERS,
            0.5,
            0.5,
            1600,
            true,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            sites,
            1,
            "",
            List.of(),
            List.of(),
            Meeting.borders(GRID, sites, CELL_CM2));
    return new PhotoMeasure(
        name + ".jpg",
        String.format(
            Locale.ROOT,
            "%016x%048x",
            0x9E3779B97F4A7C15L * (raft * 100_000L + day.toEpochDay()),
            raft),
        "bench",
        Optional.of(day.atTime(18, 0).atOffset(ZoneOffset.UTC)),
        "",
        PhotoStatus.USED,
        "",
        "",
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(board));
  }
}
