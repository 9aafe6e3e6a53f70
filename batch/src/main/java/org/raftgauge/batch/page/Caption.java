// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.batch.run.Farm;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.report.SitePlant;
import org.raftgauge.core.site.SiteMeasure;

/** Says in words what an overlay shows: parts that are put on lines as they fit. */
final class Caption {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /** A pose error that shows as 0.0 says nothing: it is not known, or beneath notice. */
  private static final double KNOWN_MM = 0.05;

  private Caption() {}

  /** Returns the paragraphs of a photo's caption, each a list of parts that stay whole. */
  static List<List<String>> of(PhotoMeasure photo, Farm farm) {
    List<List<String>> paragraphs = new ArrayList<>();
    paragraphs.add(photo(photo));
    photo.rafts().forEach(raft -> paragraphs.add(raft(photo, raft, farm)));
    if (photo.status() != PhotoStatus.USED || !photo.reason().isEmpty()) {
      paragraphs.add(
          List.of(
              photo.status().name() + (photo.reason().isEmpty() ? "" : ": " + photo.reason()),
              photo.remedy()));
    }
    return paragraphs.stream()
        .map(parts -> parts.stream().filter(part -> !part.isEmpty()).toList())
        .toList();
  }

  private static List<String> photo(PhotoMeasure photo) {
    return List.of(
        photo.photo(),
        photo.takenAt().map(TIME::format).map(t -> "taken " + t).orElse("time unknown"),
        photo.station().isEmpty() ? "" : "station " + photo.station(),
        photo.clockDoubt().isEmpty() ? "" : "clock in doubt: " + photo.clockDoubt());
  }

  private static List<String> raft(PhotoMeasure photo, RaftMeasure raft, Farm farm) {
    List<String> parts = new ArrayList<>();
    parts.add("Raft " + raft.raft().orElse("unknown"));
    photo.takenAt().ifPresent(at -> parts.add("evening " + farm.evening(at)));
    age(photo, raft, farm).ifPresent(parts::add);
    parts.add(format("%.3f mm/px", raft.mmPerPx()));
    parts.add(
        "place from "
            + raft.poseSource().name().toLowerCase(Locale.ROOT)
            + (raft.poseErrorMm() < KNOWN_MM ? "" : format(" \u00b1 %.1f mm", raft.poseErrorMm())));
    raft.canopyCover().ifPresent(cover -> parts.add(format("cover %.1f %%", 100 * cover)));
    parts.add(format("leaf %.0f cm\u00b2", totalAreaCm2(raft)));
    raft.leftoverCanopyCm2().stream()
        .filter(left -> left >= 0.05)
        .forEach(left -> parts.add(format("of no site %.1f cm\u00b2", left)));
    parts.add(raft.held().isEmpty() ? "" : "HELD: " + raft.held());
    return parts;
  }

  private static double totalAreaCm2(RaftMeasure raft) {
    return raft.sites().stream()
        .map(SiteMeasure::projectedAreaCm2)
        .flatMapToDouble(OptionalDouble::stream)
        .sum();
  }

  /** Says the age of the first plant that has one: a tray's plants run on days after sowing. */
  private static Optional<String> age(PhotoMeasure photo, RaftMeasure raft, Farm farm) {
    if (raft.raft().isEmpty() || photo.takenAt().isEmpty()) {
      return Optional.empty();
    }
    return raft.sites().stream()
        .map(site -> farm.plantAt(raft.raft().get(), site.site(), photo.takenAt().get()))
        .flatMap(Optional::stream)
        .filter(plant -> plant.dat().isPresent())
        .findFirst()
        .map(Caption::age);
  }

  private static String age(SitePlant plant) {
    boolean tray = plant.planting().transplantedOn().isEmpty();
    return format(tray ? "DAS %.1f" : "DAT %.1f", plant.dat().getAsDouble());
  }

  private static String format(String pattern, double value) {
    return String.format(Locale.ROOT, pattern, value);
  }
}
