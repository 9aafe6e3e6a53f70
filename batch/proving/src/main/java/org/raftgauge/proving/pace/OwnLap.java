// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Manifest;
import org.raftgauge.core.book.ManifestRow;
import org.raftgauge.core.measure.MeasurePhoto;
import org.raftgauge.core.measure.PhotoFacts;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;
import org.raftgauge.proving.accuracy.SiteKey;

/** Measures the photos of a set with the program's library, on one thread, in this process. */
final class OwnLap {
  private final Path photos;
  private final CropBook book;
  private final Manifest manifest;
  private final Map<SiteKey, Double> areas = new LinkedHashMap<>();

  private OwnLap(Path set) {
    this.photos = set.resolve("photos");
    this.book = CropBook.read(set.resolve("book")).book();
    this.manifest = Manifest.read(photos.resolve("manifest.csv"));
  }

  /**
   * Runs it: file to site measures, reading and hashing the file included; the first rounds, in
   * which the program is compiled, do not count.
   *
   * @param set the rendered set
   * @param names its photos
   * @param rounds that count
   */
  static Lap run(Path set, List<String> names, int rounds) throws IOException {
    OwnLap own = new OwnLap(set);
    ThreadMXBean clock = ManagementFactory.getThreadMXBean();
    Map<String, List<Double>> seconds = new LinkedHashMap<>();
    for (int round = -Math.max(2, rounds / 2); round < rounds; round++) {
      for (String name : names) {
        long start = clock.getCurrentThreadCpuTime();
        PhotoMeasure measure = own.measure(name);
        double took = (clock.getCurrentThreadCpuTime() - start) / 1e9;
        if (round >= 0) {
          seconds.computeIfAbsent(name, n -> new ArrayList<>()).add(took);
        }
        own.note(name, measure);
      }
    }
    return new Lap(seconds, own.areas);
  }

  /**
   * Returns the share of the time in each stage, over some rounds of all photos.
   *
   * @param set the rendered set
   * @param names its photos
   * @param rounds that are looked at, after {@link #run}
   */
  static Map<String, Double> stages(Path set, List<String> names, int rounds) throws IOException {
    OwnLap own = new OwnLap(set);
    return StageShares.of(
        () -> {
          for (int round = 0; round < rounds; round++) {
            for (String name : names) {
              own.measure(name);
            }
          }
        });
  }

  private PhotoMeasure measure(String name) throws IOException {
    Optional<ManifestRow> row = Optional.ofNullable(manifest.rows().get(name));
    PhotoFacts facts =
        row.map(r -> new PhotoFacts(name, r.takenAt(), r.station(), r.slot(), r.raft()))
            .orElse(PhotoFacts.of(name));
    return MeasurePhoto.measure(Files.readAllBytes(photos.resolve(name)), facts, book).measure();
  }

  private void note(String name, PhotoMeasure measure) {
    String file = name.substring(name.lastIndexOf('/') + 1);
    for (RaftMeasure raft : measure.rafts()) {
      for (SiteMeasure site : raft.sites()) {
        site.projectedAreaCm2()
            .ifPresent(
                area ->
                    areas.put(
                        new SiteKey(file, raft.raft().orElse(""), site.site().toString()), area));
      }
    }
  }
}
