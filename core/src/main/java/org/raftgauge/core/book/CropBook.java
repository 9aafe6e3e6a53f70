// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import org.raftgauge.core.problem.Problem;

/**
 * The crop book: what the grower keeps in plain files, checked.
 *
 * @param settings what {@code book.yaml} says
 * @param stations sound stations by name
 * @param layouts sound layouts by name, each with its versions in the order of their dates
 * @param crops sound crops by {@link #cropKey}
 * @param plantings the rows of {@code plantings.csv}, as written
 * @param diary what was written down day by day
 * @param tenures which planting stands on which raft, with the events taken into account, in the
 *     order of rafts, then of time
 * @param plants every plant with where it stood
 * @param broken what is wrong with stations, layouts and crops that cannot be used, by kind and
 *     name
 */
public record CropBook(
    BookSettings settings,
    Map<String, Station> stations,
    Map<String, List<Layout>> layouts,
    Map<String, Crop> crops,
    List<Planting> plantings,
    Diary diary,
    List<Tenure> tenures,
    List<PlantLife> plants,
    Map<String, Problem> broken) {

  /** The kind of a crop that a planting names and the book does not describe. */
  public static final String PLANTED_CROP = "planted crop";

  /** Copies the parts, keeping their order. */
  public CropBook {
    stations = Collections.unmodifiableMap(new LinkedHashMap<>(stations));
    layouts = Collections.unmodifiableMap(new LinkedHashMap<>(layouts));
    crops = Collections.unmodifiableMap(new LinkedHashMap<>(crops));
    plantings = List.copyOf(plantings);
    tenures =
        tenures.stream()
            .sorted(Comparator.comparing(Tenure::raft).thenComparing(Tenure::from))
            .toList();
    plants = List.copyOf(plants);
    broken = Collections.unmodifiableMap(new LinkedHashMap<>(broken));
  }

  /**
   * Reads a crop book. Never stops at the first problem: what is wrong is left out, with all that
   * is needed to say so, and the rest can be used.
   *
   * @param folder the book's folder
   * @return the book and its problems
   */
  public static BookReading read(Path folder) {
    return new BookReader(folder).read();
  }

  /** Returns the farm's time zone. */
  public ZoneId zone() {
    return settings.farmDay().zone();
  }

  /** Returns the local time at which the farm's day begins. */
  public LocalTime dayStartsAt() {
    return settings.farmDay().startsAt();
  }

  /** Returns the farm's clock. */
  public FarmDay farmDay() {
    return settings.farmDay();
  }

  /** Returns the station of photos that nothing else places, where given. */
  public Optional<String> defaultStation() {
    return settings.station();
  }

  /** Returns how photo files are named, where given. */
  public Optional<PhotoNamePattern> photoNamePattern() {
    return settings.photoName();
  }

  /** Returns the units of the reports for people. */
  public Units units() {
    return settings.units();
  }

  /** Returns which raft lay in which slot. */
  public List<Placement> placements() {
    return diary.placements();
  }

  /** Returns what happened to plants, in the order of time. */
  public List<Event> events() {
    return diary.events();
  }

  /**
   * Returns the name under which {@link #crops()} keeps a crop or variety.
   *
   * @param crop name of the crop
   * @param variety name of the variety; empty for the crop itself
   * @return such as {@code lettuce} or {@code lettuce/red oak}
   */
  public static String cropKey(String crop, String variety) {
    return variety.isEmpty() ? crop : crop + "/" + variety;
  }

  /**
   * Finds the crop of a planting: its variety where the book describes it, else the crop.
   *
   * @param planting any planting
   * @return the crop, or nothing where the book has none that can be used
   */
  public Optional<Crop> crop(Planting planting) {
    String own = cropKey(planting.crop(), planting.variety());
    return broken.containsKey("crop " + own)
        ? Optional.empty()
        : Optional.ofNullable(crops.get(own))
            .or(() -> Optional.ofNullable(crops.get(planting.crop())));
  }

  /**
   * Finds the version of a layout that holds on an evening.
   *
   * @param name the layout's name
   * @param evening the farm's day
   * @return the version, or nothing where the book has none that can be used then
   */
  public Optional<Layout> layout(String name, LocalDate evening) {
    return Layouts.inForce(layouts, name, evening);
  }

  /**
   * Finds a station.
   *
   * @param name the station's name
   * @return the station, or nothing where the book has none of that name that can be used
   */
  public Optional<Station> station(String name) {
    return Optional.ofNullable(stations.get(name));
  }

  /**
   * Says why the book has no usable part of a name.
   *
   * @param kind {@code crop}, {@code layout}, {@code station} or {@link #PLANTED_CROP}
   * @param name its name
   * @return what is wrong with it, or nothing where the book does not know it or it is sound
   */
  public Optional<Problem> whyBroken(String kind, String name) {
    return Optional.ofNullable(broken.get(kind + " " + name));
  }

  /**
   * Finds the plantings that stand on a raft at an instant.
   *
   * @param raft the raft
   * @param instant any
   * @return plantings, each as it stands on this raft; none where the raft is empty or unknown
   */
  public List<Planting> plantingsAt(String raft, Instant instant) {
    return tenuresOf(raft).stream()
        .filter(tenure -> tenure.holdsAt(instant))
        .map(Tenure::planting)
        .toList();
  }

  /**
   * Finds the plantings that stand on a raft on an evening: those that are there as the farm's day
   * ends, or else those that left in the course of that day.
   *
   * @param raft the raft
   * @param evening the farm's day
   * @return plantings, each as it stands on this raft; none where the raft is empty or unknown
   */
  public List<Planting> plantingsOn(String raft, LocalDate evening) {
    Instant begin = farmDay().start(evening);
    Instant end = farmDay().start(evening.plusDays(1));
    List<Planting> atEnd = plantingsAt(raft, end.minusNanos(1));
    return !atEnd.isEmpty()
        ? atEnd
        : tenuresOf(raft).stream()
            .filter(tenure -> tenure.overlaps(begin, end))
            .map(Tenure::planting)
            .toList();
  }

  /** Returns the part of the tenures, which are in the order of rafts, that is a raft's. */
  private List<Tenure> tenuresOf(String raft) {
    int from = 0;
    int to = tenures.size();
    while (from < to) {
      int middle = (from + to) >>> 1;
      if (tenures.get(middle).raft().compareTo(raft) < 0) {
        from = middle + 1;
      } else {
        to = middle;
      }
    }
    while (to < tenures.size() && tenures.get(to).raft().equals(raft)) {
      to++;
    }
    return tenures.subList(from, to);
  }

  /**
   * Finds the raft that lies in a slot on an evening.
   *
   * @param station the station
   * @param slot the slot
   * @param evening the farm's day
   * @return the raft, the one laid there last where rows overlap
   */
  public Optional<String> raftInSlot(String station, String slot, LocalDate evening) {
    return diary.placements().stream()
        .filter(p -> p.station().equals(station) && p.slot().equals(slot) && p.holdsOn(evening))
        .reduce((a, b) -> b.from().isBefore(a.from()) ? a : b)
        .map(Placement::raft);
  }

  /**
   * Returns the rafts that should be photographed on an evening: those with a planting as the
   * farm's day ends.
   *
   * @param evening the farm's day
   * @return raft ids in order
   */
  public NavigableSet<String> expectedRafts(LocalDate evening) {
    Instant last = farmDay().start(evening.plusDays(1)).minusNanos(1);
    NavigableSet<String> rafts = new TreeSet<>();
    tenures.stream().filter(t -> t.holdsAt(last)).map(Tenure::raft).forEach(rafts::add);
    return Collections.unmodifiableNavigableSet(rafts);
  }
}
