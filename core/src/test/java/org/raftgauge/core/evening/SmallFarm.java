// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.core.track.Spread;

/**
 * Eight rafts of six plants in two ponds, set out on {@link #FIRST} and photographed each evening
 * at 18:00: 8 cm2 times exp(0.12 age), each plant by some 8 % its own for good, each photo by 2 %.
 */
final class SmallFarm {
  static final LocalDate FIRST = LocalDate.of(2027, 3, 1);
  static final double RATE = 0.12;
  private static final int RAFTS = 8;
  private static final int SITES = 6;
  private static final String PLANTINGS =
      "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n";

  private final Path folder;
  private final Map<String, Double> factors = new HashMap<>();
  private final Map<String, SiteMeasure> said = new HashMap<>();
  private final Map<String, String> files = new HashMap<>();
  private final List<String> missed = new ArrayList<>();
  private final List<String> unread = new ArrayList<>();
  private final Map<String, String> held = new HashMap<>();
  private final Map<String, String> doubted = new HashMap<>();
  private final Map<Integer, String> crops = new HashMap<>();
  private int grownOn = Integer.MAX_VALUE;
  private String harvest = "";
  private String harvestBy = "";

  SmallFarm(Path folder) {
    this.folder = folder;
  }

  static String raft(int raft) {
    return "R-" + raft;
  }

  static LocalDate day(int day) {
    return FIRST.plusDays(day);
  }

  /** Makes a site's areas another share of a healthy plant's, on all evenings. */
  SmallFarm share(int raft, String site, double share) {
    factors.put(raft(raft) + "/" + site, share);
    return this;
  }

  /** Replaces what was said of a site on an evening. */
  SmallFarm say(int raft, int day, SiteMeasure measure) {
    said.put(raft(raft) + "/" + measure.site() + "/" + day, measure);
    return this;
  }

  SmallFarm missed(int raft, int day) {
    missed.add(raft(raft) + "/" + day);
    return this;
  }

  SmallFarm unread(int raft, int day) {
    unread.add(raft(raft) + "/" + day);
    return this;
  }

  SmallFarm held(int raft, int day, String why) {
    held.put(raft(raft) + "/" + day, why);
    return this;
  }

  SmallFarm doubted(int raft, int day, String why) {
    doubted.put(raft(raft) + "/" + day, why);
    return this;
  }

  /** Lets no plant grow any more after an evening. */
  SmallFarm stopsAfter(int day) {
    grownOn = day;
    return this;
  }

  SmallFarm file(String name, String text) {
    files.put(name, text);
    return this;
  }

  SmallFarm harvest(String keys) {
    harvest = "    harvest: {" + keys + "}\n";
    return this;
  }

  /** Says more of the crop. */
  SmallFarm more(String key) {
    harvest += "    " + key + "\n";
    return this;
  }

  /** Names another crop in a raft's planting. */
  SmallFarm planted(int raft, String crop) {
    crops.put(raft, crop);
    return this;
  }

  SmallFarm harvestBy(LocalDate day) {
    harvestBy = day.toString();
    return this;
  }

  EveningResult close(int lastPhoto, int evening) {
    return CloseEvening.of(book(), seen(lastPhoto), day(evening), Map.of());
  }

  /** Returns the worklist's rows of one action. */
  List<Task> tasks(int evening, Task.Action action) {
    return worklist(evening).stream().filter(t -> t.action() == action).toList();
  }

  /** Returns the worklist of an evening, without the curves, which take time. */
  List<Task> worklist(int evening) {
    CloseEvening.Asked asked =
        new CloseEvening.Asked(book(), seen(evening), day(evening), Map.of());
    return new MakeWorklist(CloseEvening.tonight(asked, Spread.IN_TURN)).tasks();
  }

  /** Returns what was seen on evenings 0 to {@code last}. */
  Seen seen(int last) {
    Random random = new Random(11);
    List<RaftLook> rafts = new ArrayList<>();
    List<SiteLook> sites = new ArrayList<>();
    double[] own = random.doubles(RAFTS * SITES, -0.14, 0.14).toArray();
    for (int day = 0; day <= last; day++) {
      for (int raft = 0; raft < RAFTS; raft++) {
        String key = raft(raft) + "/" + day;
        double[] noise = random.doubles(SITES, -0.035, 0.035).toArray();
        if (!missed.contains(key)) {
          OffsetDateTime at = day(day).atTime(18, 0).atOffset(ZoneOffset.UTC);
          String station = "bench-" + raft % 2;
          RaftLook.Tag tag = unread.contains(key) ? RaftLook.Tag.UNREAD : RaftLook.Tag.FINE;
          String why = held.getOrDefault(key, "");
          String doubt = doubted.getOrDefault(key, "");
          rafts.add(new RaftLook(key, station, raft(raft), at, why, tag, doubt));
          for (int i = 0; i < SITES; i++) {
            SiteMeasure measure = measure(raft, i, day, own[raft * SITES + i] + noise[i]);
            sites.add(new SiteLook(key, station, raft(raft), at, measure));
          }
        }
      }
    }
    return new Seen(rafts, sites);
  }

  private SiteMeasure measure(int raft, int i, int day, double ln) {
    SiteId site = new SiteId(i / 3, i % 3);
    String key = raft(raft) + "/" + site;
    String why = held.getOrDefault(raft(raft) + "/" + day, "");
    double area =
        8 * Math.exp(RATE * (Math.min(day, grownOn) + 0.75) + ln) * factors.getOrDefault(key, 1.0);
    return said.getOrDefault(key + "/" + day, measure(site, area, false, why));
  }

  static SiteMeasure measure(SiteId site, double areaCm2, boolean closed, String held) {
    OptionalDouble area = held.isEmpty() ? OptionalDouble.of(areaCm2) : OptionalDouble.empty();
    OptionalDouble se = held.isEmpty() ? OptionalDouble.of(0.02 * areaCm2) : area;
    return new SiteMeasure(
        site, area, se, area, closed, closed ? 0.6 : 0, 0, 1, List.of(), List.of(), 1, held);
  }

  CropBook book() {
    try {
      Files.writeString(folder.resolve("book.yaml"), "time_zone: UTC\nday_starts_at: \"04:00\"\n");
      Files.writeString(
          folder.resolve("layouts.yaml"),
          """
          layouts:
            small-6:
              board: {width_mm: 600, length_mm: 400}
              sites: {rows: 2, columns: 3, first_x_mm: 120, first_y_mm: 110, pitch_x_mm: 180, pitch_y_mm: 180}
              tag: {x_mm: 300, y_mm: 42, side_mm: 60}
          """);
      Files.writeString(
          folder.resolve("crops.yaml"),
          "crops:\n  small:\n    colour_model: green-leaf\n"
              + "    height_model: {scale_mm: 5, exponent: 0.5}\n"
              + harvest);
      StringBuilder plantings = new StringBuilder(PLANTINGS);
      for (int raft = 0; raft < RAFTS; raft++) {
        plantings
            .append(
                raft(raft)
                    + ",P"
                    + raft % 2
                    + ","
                    + (raft + 1)
                    + ","
                    + crops.getOrDefault(raft, "small")
                    + ",,small-6,,,")
            .append(FIRST + "," + (raft == 0 ? harvestBy : "") + ",,\n");
      }
      Files.writeString(folder.resolve("plantings.csv"), plantings.toString());
      for (Map.Entry<String, String> file : files.entrySet()) {
        Files.writeString(folder.resolve(file.getKey()), file.getValue());
      }
      return CropBook.read(folder).book();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
