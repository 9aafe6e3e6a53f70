// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.raftgauge.core.station.StationEvening;

/** Writes the page of the station check's figures. */
public final class StationsPage {
  private static final int YEARS = 300;

  private StationsPage() {}

  /**
   * What is asked for.
   *
   * @param work folder for photos
   * @param stations number of stations
   * @param evenings usual evenings a station
   * @param faultEvenings evenings that each fault lasts
   * @param seed of stations, plants and evenings
   * @param faultSeed of the faults
   * @param stamp what is measured, such as the commit
   */
  public record Asked(
      Path work,
      int stations,
      int evenings,
      int faultEvenings,
      long seed,
      long faultSeed,
      String stamp) {}

  /**
   * Makes photos, measures them and writes the page.
   *
   * @param asked what is asked for
   * @param progress told each station when it is done
   * @return the page in Markdown
   * @throws IOException if a file cannot be written
   */
  public static String of(Asked asked, Consumer<String> progress) throws IOException {
    Season.Plan plan =
        new Season.Plan(asked.evenings(), asked.faultEvenings(), asked.faultSeed(), asked.stamp());
    List<Season> seasons = new ArrayList<>();
    List<List<StationEvening>> usual = new ArrayList<>();
    for (int i = 0; i < asked.stations(); i++) {
      Season season = Season.make(asked.work(), asked.seed(), i, plan);
      seasons.add(season);
      usual.add(season.usualEvenings());
      progress.accept("station " + (i + 1) + " of " + asked.stations());
    }
    StringBuilder page = new StringBuilder(head(asked));
    for (Fault fault : Fault.values()) {
      page.append(row(ScoreFaults.of(fault, seasons)));
    }
    page.append(alarms(usual, asked.seed()));
    return page.toString();
  }

  private static String head(Asked asked) {
    return String.format(
        Locale.ROOT,
        "# Stations%n%nMade by `batch/proving/prove stations`; %s, seed %d, faults of seed %d.%n%n%d"
            + " rendered fixed stations over three boards (1000 x 660 px, 1.76 mm a px), %d evenings"
            + " each of one photo: plants grow, are cut and replanted, boards float by 2.5 mm, water"
            + " by 3 mm, the camera hangs still to half a px, lamps and exposure scatter by a few"
            + " percent. Each fault begins on some evening after the 14th and lasts %d evenings. The"
            + " check and its limits were fixed before these faults were drawn.%n%n\"Said after\" is"
            + " the number of photos with the fault until the station check says that something is"
            + " not as it was. A photo is held where the check, or its own pose, holds all its"
            + " rafts. \"Area off\" is the visible leaf area of rafts that were measured all the same,"
            + " over that of the same evening without the fault, less 1: what the fault costs where"
            + " photos are not held. Rafts of seedlings (under 20 cm2 a plant) are left out of it:"
            + " photos of this size measure them unsteadily, fault or not.%n%n| fault | said, of stations | said after, photos: median (most) |"
            + " photos held | area off: median | 95th of its size | said by (share of photos) |%n"
            + "| --- | ---: | ---: | ---: | ---: | ---: | --- |%n",
        asked.stamp(),
        asked.seed(),
        asked.faultSeed(),
        asked.stations(),
        asked.evenings(),
        asked.faultEvenings());
  }

  private static String row(ScoreFaults.Score score) {
    List<Integer> delays = score.delays().stream().sorted().toList();
    String delay =
        delays.isEmpty()
            ? "never"
            : delays.get(delays.size() / 2) + " (" + delays.get(delays.size() - 1) + ")";
    String signs =
        score.signs().entrySet().stream()
            .sorted(Map.Entry.<String, Integer>comparingByValue(Comparator.reverseOrder()))
            .limit(4)
            .map(
                e ->
                    String.format(
                        Locale.ROOT,
                        "%s %.0f %%",
                        e.getKey(),
                        100.0 * e.getValue() / score.photos()))
            .collect(Collectors.joining(", "));
    return String.format(
        Locale.ROOT,
        "| %s | %d of %d | %s | %d of %d | %s | %s | %s |%n",
        score.fault().label(),
        delays.size(),
        score.cases(),
        delay,
        score.held(),
        score.photos(),
        percent(score.offFractions(), 0.5, "%+.1f %%"),
        percent(score.offFractions().stream().map(Math::abs).toList(), 0.95, "%.1f %%"),
        signs);
  }

  private static String percent(List<Double> shares, double quantile, String format) {
    List<Double> sorted = shares.stream().sorted().toList();
    return sorted.isEmpty()
        ? "none measured"
        : String.format(
            Locale.ROOT, format, 100 * sorted.get((int) (quantile * (sorted.size() - 1) + 0.5)));
  }

  private static String alarms(List<List<StationEvening>> usual, long seed) {
    FalseAlarms.Count rendered = FalseAlarms.rendered(usual);
    FalseAlarms.Count drawn = FalseAlarms.drawn(usual, YEARS, seed);
    return String.format(
            Locale.ROOT,
            "%n## False alarms%n%n| evenings without a fault | station-years | alarms a station-year"
                + " | evenings held a station-year |%n| --- | ---: | ---: | ---: |%n")
        + row("as rendered", rendered)
        + row("years drawn from them, weeks at a time", drawn)
        + "\nBy sign, a station-year of those drawn: "
        + drawn.bySign().entrySet().stream()
            .map(
                e ->
                    String.format(Locale.ROOT, "%s %.2f", e.getKey(), e.getValue() / drawn.years()))
            .collect(Collectors.joining(", "))
        + ".\n";
  }

  private static String row(String what, FalseAlarms.Count count) {
    return String.format(
        Locale.ROOT,
        "| %s | %.2f | %.2f | %.2f |%n",
        what,
        count.years(),
        count.alarms() / count.years(),
        count.holds() / count.years());
  }
}
