// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.everyday;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.raftgauge.batch.run.Digest;
import org.raftgauge.batch.run.Measurer;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoResult;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Stands in for the camera: a photo that is a line {@code RAFT DATE} shows plants that grow by 12 %
 * a day from 8 cm2, each by some 10 % its own; of each raft one plant has half and one none.
 */
final class PretendMeasurer implements Measurer {
  private static final double RATE = 0.12;
  private static final double START_CM2 = 8;

  private final SiteGrid grid;
  private final LocalDate planted;
  private final long seed;

  PretendMeasurer(SiteGrid grid, LocalDate planted, long seed) {
    this.grid = grid;
    this.planted = planted;
    this.seed = seed;
  }

  @Override
  public String settingsHash(PhotoFacts facts) {
    return "pretended";
  }

  @Override
  public PhotoResult measure(byte[] bytes, PhotoFacts facts) {
    String[] said = new String(bytes, StandardCharsets.UTF_8).strip().split(" ", 2);
    LocalDate day = LocalDate.parse(said[1]);
    RaftMeasure board =
        new RaftMeasure(
            Optional.of(said[0]),
            "",
            PretendFarm.LAYOUT,
            PoseSource.MARKERS,
            0.5,
            0.5,
            1500,
            true,
            OptionalDouble.of(0.2),
            OptionalDouble.of(0),
            sites(said[0], day),
            1,
            "");
    PhotoMeasure photo =
        new PhotoMeasure(
            facts.photo(),
            Digest.of(bytes),
            "bench",
            Optional.of(day.atTime(18, 0).atOffset(ZoneOffset.UTC)),
            "",
            PhotoStatus.USED,
            "",
            "",
            OptionalDouble.of(0.6),
            OptionalDouble.of(0),
            OptionalDouble.of(0),
            List.of(board));
    return new PhotoResult(photo, Optional.empty(), Optional.empty(), List.of());
  }

  private List<SiteMeasure> sites(String raft, LocalDate day) {
    Random own = new Random(31 * seed + raft.hashCode());
    double age = day.toEpochDay() - planted.toEpochDay();
    List<SiteMeasure> sites = new ArrayList<>();
    for (int i = 0; i < grid.sites().size(); i++) {
      double share = i == 0 ? 0 : i == 5 ? 0.5 : Math.exp(0.1 * own.nextGaussian());
      sites.add(site(grid.sites().get(i), share * START_CM2 * Math.exp(RATE * age)));
    }
    return sites;
  }

  private static SiteMeasure site(SiteId site, double cm2) {
    return new SiteMeasure(
        site,
        OptionalDouble.of(cm2),
        OptionalDouble.of(0.1 + 0.03 * cm2),
        OptionalDouble.of(cm2),
        false,
        0,
        0,
        1,
        List.of(),
        List.of(),
        1,
        "");
  }
}
