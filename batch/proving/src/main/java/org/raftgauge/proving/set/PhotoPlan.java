// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.time.LocalDate;
import java.util.Optional;
import org.raftgauge.core.book.Layout;

/**
 * One photo to make.
 *
 * @param number of the photo in its whole set, from 0
 * @param condition its look
 * @param crop the crop
 * @param stage how far it has grown
 * @param station where it is taken
 * @param seed of everything about it that varies
 * @param growing the raft and its age, where it is photographed on many evenings
 * @param filling what its holes are filled with, where that is the question
 */
record PhotoPlan(
    int number,
    Condition condition,
    CropKind crop,
    Stage stage,
    StationPlan station,
    long seed,
    Optional<Growing> growing,
    Optional<Filling> filling) {

  /** Plans a photo of plants that are seen but once. */
  PhotoPlan(
      int number, Condition condition, CropKind crop, Stage stage, StationPlan station, long seed) {
    this(number, condition, crop, stage, station, seed, Optional.empty(), Optional.empty());
  }

  /** Returns the same photo of a raft that grows. */
  PhotoPlan of(Growing raft) {
    return new PhotoPlan(number, condition, crop, stage, station, seed, Optional.of(raft), filling);
  }

  /** Returns the same photo with other plugs. */
  PhotoPlan in(Filling plugs) {
    return new PhotoPlan(
        number, condition, crop, stage, station, seed, growing, Optional.of(plugs));
  }

  /** Returns what the photo is counted by in tables and folders. */
  String look() {
    return filling.map(Filling::label).orElse(condition.label());
  }

  /** Returns the evening: fixed stations get one each, others share one unless their rafts grow. */
  LocalDate date() {
    LocalDate first = LocalDate.of(2026, 3, 10);
    int days = station.fixed() ? number : growing.map(Growing::dat).orElse(0);
    return first.plusDays(days);
  }

  /** Returns the days after transplant that the book is given. */
  int dat() {
    return growing.map(Growing::dat).orElse(stage.dat());
  }

  /** Returns the board that lies at a place of the station. */
  Layout layout() {
    return station.layout(growing.map(Growing::raft).orElse(number));
  }

  /** Returns what the photo's combination is called, at most 20 letters, digits and dashes. */
  String code() {
    if (growing.isPresent()) {
      return "GRO-" + crop.habit().code() + "-" + growing.get().raft();
    }
    return condition.code()
        + "-"
        + crop.habit().code()
        + "-"
        + stage.code()
        + (station.fixed() ? "F" : "P")
        + number;
  }

  /** Returns the id of one of the photo's rafts. */
  String raft(int index) {
    return station.places().size() == 1 ? code() : code() + "-" + (index + 1);
  }

  /**
   * Returns the photo's path under the photo folder. Only a photo of one passing raft is named by
   * the book's pattern, date and raft; the others say neither, the manifest dates them.
   */
  String path() {
    boolean one = !station.fixed() && station.places().size() == 1;
    String name = one ? date() + "_" + code() : station.name() + "_" + code();
    return look() + "/" + name + ".jpg";
  }

  /** Returns the path of a picture that goes with the photo. */
  String pngPath() {
    return path().replace(".jpg", ".png");
  }
}
