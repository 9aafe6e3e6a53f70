// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.raftgauge.batch.station.StationEvenings;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Kept;
import org.raftgauge.batch.store.Origin;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.proving.scene.Scene;

/**
 * Evenings of one station, one photo each, measured: as they usually are, and from a day on with
 * each fault. Photos already in the folder are used again.
 */
final class Season {
  private static final LocalDate FIRST = LocalDate.of(2026, 1, 1);
  private static final FarmDay DAY = new FarmDay(ZoneId.of("UTC"), LocalTime.of(4, 0));

  private final Path folder;
  private final PondStation station;
  private final long seed;
  private final CropBook book;
  private final List<PhotoMeasure> usual = new ArrayList<>();
  private final Map<Fault, List<PhotoMeasure>> faulty = new EnumMap<>(Fault.class);
  private final Map<Fault, Integer> onsets = new EnumMap<>(Fault.class);

  private Season(Path folder, long seed, int number) throws IOException {
    this.folder = folder.resolve("station-" + seed + "-" + number);
    this.seed = seed * 100 + number;
    this.station = PondStation.draw("pond-" + number, new Random(this.seed));
    Path books = this.folder.resolve("book");
    station.writeBook(books);
    this.book = CropBook.read(books).book();
  }

  /**
   * What is to be made.
   *
   * @param evenings usual ones
   * @param faultEvenings evenings that each fault lasts
   * @param faultSeed of the faults: when they begin and which way they go
   */
  record Plan(int evenings, int faultEvenings, long faultSeed) {}

  /** Makes a station's evenings. */
  static Season make(Path folder, long seed, int number, Plan plan) throws IOException {
    Season season = new Season(folder, seed, number);
    for (int evening = 0; evening < plan.evenings(); evening++) {
      season.usual.add(season.photo(evening, "usual", season.night(evening)));
    }
    for (Fault fault : Fault.values()) {
      season.add(fault, plan);
    }
    return season;
  }

  private void add(Fault fault, Plan plan) throws IOException {
    long own = plan.faultSeed() * 1_000_003 + seed * 31 + fault.number();
    int least = 14;
    int onset = least + new Random(own).nextInt(plan.evenings() - plan.faultEvenings() - least + 1);
    List<PhotoMeasure> photos = new ArrayList<>();
    for (int i = 0; i < plan.faultEvenings(); i++) {
      Night night = night(onset + i).with(fault, new Random(own + 1));
      String name = fault.name() + "-" + plan.faultSeed();
      photos.add(photo(onset + i, name, night));
    }
    onsets.put(fault, onset);
    faulty.put(fault, photos);
  }

  private Night night(int evening) {
    return Night.usual(station, new Random(seed * 613 + evening));
  }

  private PhotoMeasure photo(int evening, String name, Night night) throws IOException {
    Path file = folder.resolve(name + "-" + evening + ".jpg");
    if (!Files.exists(file)) {
      Scene scene = PondCrop.scene(seed, evening);
      TakePhoto.write(station, scene, night, file);
    }
    return TakePhoto.measure(
        Files.readAllBytes(file), book, station.name(), FIRST.plusDays(evening));
  }

  /** Returns the usual evenings as the station check sees them. */
  List<StationEvening> usualEvenings() throws IOException {
    return evenings(usual);
  }

  /** Returns the evenings up to a fault's onset as usual, then with the fault. */
  ScoreFaults.Case with(Fault fault) throws IOException {
    int onset = onsets.get(fault);
    List<PhotoMeasure> photos = faulty.get(fault);
    List<PhotoMeasure> all = new ArrayList<>(usual.subList(0, onset));
    all.addAll(photos);
    return new ScoreFaults.Case(
        evenings(all), onset, photos, usual.subList(onset, onset + photos.size()));
  }

  /** Takes the program's own way: through the history's file. */
  private List<StationEvening> evenings(List<PhotoMeasure> photos) throws IOException {
    Path file = folder.resolve("history.db");
    Files.deleteIfExists(file);
    try (History history = History.open(file)) {
      history.save(photos.stream().map(p -> Kept.fresh(p, new Origin("", "", "", ""))).toList());
      return StationEvenings.of(history.measures().stationPast(station.name()), DAY, FIRST);
    }
  }
}
