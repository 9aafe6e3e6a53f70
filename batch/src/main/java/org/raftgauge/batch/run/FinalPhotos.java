// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;

/** Gives each photo file of a run its last word: a copy, known, or as settled. */
final class FinalPhotos {

  private FinalPhotos() {}

  /** Returns the measured photos of a run, each of other bytes: the first of copies. */
  static List<PhotoMeasure> distinct(List<Measured> measured) {
    Map<String, String> first = new HashMap<>();
    List<PhotoMeasure> photos = new ArrayList<>();
    for (Measured each : measured) {
      boolean kept = each.source() != Measured.Source.FAILED;
      if (kept && first.putIfAbsent(each.measure().sha256(), "") == null) {
        photos.add(each.measure());
      }
    }
    return photos;
  }

  /**
   * Returns every file of the run with its last word.
   *
   * @param measured the files, in order
   * @param settled the distinct photos among them, and others
   * @return one for each file, in the same order
   */
  static List<Settled> of(List<Measured> measured, List<Settled> settled) {
    Map<String, Settled> bySha256 = new HashMap<>();
    settled.forEach(s -> bySha256.put(s.photo().sha256(), s));
    Map<String, String> first = new HashMap<>();
    List<Settled> photos = new ArrayList<>();
    for (Measured each : measured) {
      PhotoMeasure photo = each.measure();
      if (each.source() == Measured.Source.FAILED) {
        photos.add(new Settled(photo, List.of()));
        continue;
      }
      String original = first.putIfAbsent(photo.sha256(), photo.photo());
      photos.add(
          original == null ? known(each, bySha256.get(photo.sha256())) : copy(photo, original));
    }
    return photos;
  }

  private static Settled known(Measured measured, Settled settled) {
    boolean known =
        measured.source() == Measured.Source.HISTORY
            && settled.photo().status() == PhotoStatus.USED;
    return known
        ? new Settled(
            Rows.with(
                settled.photo(),
                new Say(PhotoStatus.KNOWN, settled.photo().reason(), settled.photo().remedy())),
            settled.rafts())
        : settled;
  }

  private static Settled copy(PhotoMeasure photo, String original) {
    PhotoMeasure row =
        Rows.photo(
            photo.photo(),
            photo.sha256(),
            new Say(
                PhotoStatus.SKIPPED,
                "the same bytes as " + original,
                "take one of the two out of the folder"));
    return new Settled(row, List.of());
  }
}
