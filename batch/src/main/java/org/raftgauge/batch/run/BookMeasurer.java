// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.book.Weighing;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoResult;

/** Measures by a crop book. */
public final class BookMeasurer implements Measurer {
  private final CropBook book;
  private final String sharedParts;
  private final Map<String, String> hashes = new ConcurrentHashMap<>();

  /**
   * Wraps a book.
   *
   * @param book the book
   */
  public BookMeasurer(CropBook book) {
    this.book = book;
    this.sharedParts =
        sorted(stations(book))
            + sorted(book.layouts())
            + sorted(crops(book))
            + book.settings()
            + book.placements();
  }

  private static Map<String, Station> stations(CropBook book) {
    Map<String, Station> stations = new TreeMap<>();
    book.stations().forEach((name, station) -> stations.put(name, station.forMeasuring()));
    return stations;
  }

  private static Map<String, Crop> crops(CropBook book) {
    Map<String, Crop> crops = new TreeMap<>();
    book.crops().forEach((name, crop) -> crops.put(name, crop.forMeasuring()));
    return crops;
  }

  @Override
  public PhotoResult measure(byte[] bytes, PhotoFacts facts) {
    return MeasurePhoto.measure(bytes, facts, book);
  }

  @Override
  public PhotoResult measure(byte[] bytes, Optional<byte[]> second, PhotoFacts facts) {
    return MeasurePhoto.measure(bytes, second, facts, book);
  }

  /**
   * Hashes what measuring needs of stations, layouts, crops and placements, and the plantings and
   * ruler heights of the raft that manifest or file name gives; of all rafts where neither does.
   * Hashed once a raft: a season has a thousand photos of each.
   */
  @Override
  public String settingsHash(PhotoFacts facts) {
    Optional<String> raft = facts.raft().or(() -> MeasurePhoto.raftOfName(book, facts.photo()));
    return hashes.computeIfAbsent(raft.orElse(""), r -> hash(raft));
  }

  private String hash(Optional<String> raft) {
    StringBuilder parts = new StringBuilder(sharedParts);
    for (Planting planting : book.plantings()) {
      if (raft.isEmpty() || raft.get().equals(planting.raft())) {
        parts.append(describe(planting)).append('\n');
      }
    }
    for (Weighing weighing : book.diary().weighings()) {
      boolean height = weighing.topHeightMm().isPresent();
      if (height && (raft.isEmpty() || raft.get().equals(weighing.raft()))) {
        parts.append(describe(weighing)).append('\n');
      }
    }
    return Digest.of(parts.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** Sets of a record print in an order of the process's own; the sites are sorted here. */
  private static String describe(Planting p) {
    return p.raft()
        + "|"
        + p.crop()
        + "|"
        + p.variety()
        + "|"
        + p.layout()
        + "|"
        + new TreeSet<>(p.sites())
        + "|"
        + p.sownOn()
        + "|"
        + p.transplantedOn()
        + "|"
        + p.endedOn();
  }

  /** Leaves out the line and the weight: they change no measure. */
  private static String describe(Weighing w) {
    return w.raft()
        + "|"
        + w.site()
        + "|"
        + w.weighedAt().toInstant()
        + "|"
        + w.topHeightMm().getAsDouble();
  }

  private static String sorted(Map<String, ?> parts) {
    return new TreeMap<>(parts).toString();
  }
}
