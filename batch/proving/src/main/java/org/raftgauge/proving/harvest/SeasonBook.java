// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;

/** Writes a simulated season's crop book and reads it as any book is read. */
final class SeasonBook {
  private final Season season;
  private final SeasonPlace place;

  private SeasonBook(Season season, SeasonPlace place) {
    this.season = season;
    this.place = place;
  }

  /** Writes and reads the book of a season. */
  static CropBook of(Season season, SeasonPlace place, Path folder) throws IOException {
    return new SeasonBook(season, place).write(folder);
  }

  private CropBook write(Path folder) throws IOException {
    Files.createDirectories(folder.resolve("stations"));
    Files.writeString(
        folder.resolve("book.yaml"),
        "time_zone: UTC\nday_starts_at: \"04:00\"\nstation: bench\nphoto_name: \"{date}_{raft}\"\nunits:"
            + " metric\n");
    Files.writeString(folder.resolve("stations/bench.yaml"), place.station());
    Files.writeString(folder.resolve("layouts.yaml"), place.layouts());
    Files.writeString(
        folder.resolve("crops.yaml"),
        String.format(
            Locale.ROOT,
            "crops:%n  batavia:%n    colour_model: green-leaf%n"
                + "    height_model: %s%n%s"
                + "    harvest: {head_weight_g: 150, minimum_g: %.1f, ready_share: 0.9,"
                + " window_dat: [20, 45]}%n",
            place.heightModel(),
            place.equals(SeasonPlace.UNSEEN) ? "" : "    grader: batavia\n",
            season.minimumG));
    StringBuilder plantings =
        new StringBuilder(
            "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,"
                + "ended_on,lot\n");
    StringBuilder events = new StringBuilder("at,kind,raft,site,to_raft,to_site,by,note\n");
    for (int cycle = 0; cycle < season.past.size(); cycle++) {
      LocalDate start = Season.starts(cycle);
      plantings(
          plantings,
          season.past.get(cycle),
          start,
          start.plusDays(Season.HARVESTED_DAT).toString());
      deaths(events, season.past.get(cycle), start, SeasonSetting.HARVEST_DAT);
    }
    plantings(plantings, season.now, Season.TONIGHTS, "");
    deaths(events, season.now, Season.TONIGHTS, SeasonSetting.HARVEST_DAT - SeasonSetting.LEAD);
    Files.writeString(folder.resolve("plantings.csv"), plantings);
    Files.writeString(folder.resolve("events.csv"), events);
    Files.writeString(folder.resolve("harvests.csv"), harvests(season));
    Files.writeString(folder.resolve("weighings.csv"), weighings(season));
    BookReading reading = CropBook.read(folder);
    if (reading.problems().stream().anyMatch(p -> p.isError())) {
      throw new IOException("the season's book: " + reading.problems());
    }
    return reading.book();
  }

  private void plantings(StringBuilder text, List<Plant> plants, LocalDate start, String ended) {
    TreeSet<String> rafts = new TreeSet<>();
    plants.forEach(p -> rafts.add(p.raft));
    rafts.forEach(
        raft ->
            text.append(raft)
                .append(",pond-1,,batavia,,")
                .append(place.layout())
                .append(",,,")
                .append(start)
                .append(",,")
                .append(ended)
                .append(",\n"));
  }

  private static String weighings(Season season) {
    StringBuilder text =
        new StringBuilder("raft,site,weighed_at,fresh_weight_g,top_height_mm,state\n");
    for (Season.Pick pick : season.picks) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%sT18:00,%.1f,,whole%n",
              pick.plant().raft,
              pick.plant().site,
              Season.starts(0).plusDays(pick.dat()),
              season.weightG(pick.plant(), pick.dat())));
    }
    return text.toString();
  }

  private static String harvests(Season season) {
    StringBuilder text = new StringBuilder("raft,harvested_at,heads,total_weight_g\n");
    for (int cycle = 0; cycle < season.past.size(); cycle++) {
      LocalDate day = Season.starts(cycle).plusDays(Season.HARVESTED_DAT);
      Map<String, List<Plant>> rafts =
          season.past.get(cycle).stream()
              .filter(p -> p.standsOn(Season.HARVESTED_DAT))
              .collect(Collectors.groupingBy(p -> p.raft, TreeMap::new, Collectors.toList()));
      rafts.forEach(
          (raft, plants) ->
              text.append(
                  String.format(
                      Locale.ROOT,
                      "%s,%sT18:00,%d,%.0f%n",
                      raft,
                      day,
                      plants.size(),
                      plants.stream()
                          .mapToDouble(p -> season.weightG(p, Season.HARVESTED_DAT))
                          .sum())));
    }
    return text.toString();
  }

  private static void deaths(StringBuilder text, List<Plant> plants, LocalDate start, int last) {
    for (Plant plant : plants) {
      if (plant.diesOn <= last) {
        text.append(start.plusDays(plant.diesOn))
            .append("T12:00,died,")
            .append(plant.raft)
            .append(',')
            .append(plant.site)
            .append(",,,,\n");
      }
    }
  }
}
