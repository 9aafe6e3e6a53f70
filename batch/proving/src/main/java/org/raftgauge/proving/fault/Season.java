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
import java.util.Optional;
import java.util.Random;
import org.raftgauge.batch.run.MeasureBytes;
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
 * each fault. Photos already in the folder are used again, and so is what the same commit measured
 * on them, so that a long proof can be made in several goes.
 */
final class Season {
  private static final LocalDate FIRST = LocalDate.of(2026, 1, 1);
  private static final Origin NOWHERE = new Origin("", "", "", "");
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
   * @param stamp what measures, such as the commit
   */
  record Plan(int evenings, int faultEvenings, long faultSeed, String stamp) {

    private String file() {
      return "measured-" + stamp.replaceAll("[^A-Za-z0-9]+", "-") + ".db";
    }
  }

  /** Makes a station's evenings. */
  static Season make(Path folder, long seed, int number, Plan plan) throws IOException {
    Season season = new Season(folder, seed, number);
    try (History kept = History.open(season.folder.resolve(plan.file()))) {
      for (int evening = 0; evening < plan.evenings(); evening++) {
        Path file = season.photo(evening, "usual", season.night(evening));
        season.usual.add(season.measure(file, evening, kept));
      }
      for (Fault fault : Fault.values()) {
        season.add(fault, plan, kept);
      }
    }
    return season;
  }

  private void add(Fault fault, Plan plan, History kept) throws IOException {
    long own = plan.faultSeed() * 1_000_003 + seed * 31 + fault.number();
    int least = 14;
    int onset = least + new Random(own).nextInt(plan.evenings() - plan.faultEvenings() - least + 1);
    List<PhotoMeasure> photos = new ArrayList<>();
    for (int i = 0; i < plan.faultEvenings(); i++) {
      Night night = night(onset + i).with(fault, new Random(own + 1));
      String name = fault.name() + "-" + plan.faultSeed();
      photos.add(measure(photo(onset + i, name, night), onset + i, kept));
    }
    onsets.put(fault, onset);
    faulty.put(fault, photos);
  }

  private Night night(int evening) {
    return Night.usual(station, new Random(seed * 613 + evening));
  }

  private Path photo(int evening, String name, Night night) throws IOException {
    Path file = folder.resolve(name + "-" + evening + ".jpg");
    if (!Files.exists(file)) {
      Scene scene = PondCrop.scene(seed, evening);
      TakePhoto.write(station, scene, night, file);
    }
    return file;
  }

  private PhotoMeasure measure(Path file, int evening, History kept) throws IOException {
    byte[] jpeg = Files.readAllBytes(file);
    Optional<Kept> known = kept.find(MeasureBytes.sha256(jpeg));
    if (known.isPresent()) {
      return known.get().measure();
    }
    PhotoMeasure measure = TakePhoto.measure(jpeg, book, station.name(), FIRST.plusDays(evening));
    kept.save(List.of(Kept.fresh(measure, NOWHERE)));
    return measure;
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
      history.save(photos.stream().map(p -> Kept.fresh(p, NOWHERE)).toList());
      return StationEvenings.of(history.measures().stationPast(station.name()), DAY, FIRST);
    }
  }
}
