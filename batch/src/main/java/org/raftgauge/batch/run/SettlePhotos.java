// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.batch.store.Corrections;
import org.raftgauge.batch.store.Measures;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * The second pass: settles a run's photos against each other and against what the history knows of
 * their rafts.
 *
 * @param photos the run's photos and earlier ones of their evenings, each of other bytes
 * @param changed those whose rafts had to be turned, held for their turn or station, or that are
 *     corrected, by hash
 */
record SettlePhotos(List<Settled> photos, Map<String, SettleHalfTurns.Outcome> changed) {

  /**
   * Settles.
   *
   * @param measures what was measured so far, as corrected
   * @param measured the run's photos
   * @param doubts what the stations' charts say
   * @param farm the book
   * @return what became of them
   * @throws IOException if the history cannot be read
   */
  static SettlePhotos of(
      Measures measures, List<Measured> measured, StationDoubts doubts, Farm farm)
      throws IOException {
    Corrections corrections = measures.corrections();
    List<PhotoMeasure> run =
        FinalPhotos.distinct(measured).stream().map(corrections::apply).toList();
    return of(new Looked(run, earlier(measures, run)), corrections, doubts, farm);
  }

  /**
   * Photos to settle.
   *
   * @param run the run's photos, each of other bytes
   * @param earlier other photos of their rafts
   */
  record Looked(List<PhotoMeasure> run, List<PhotoMeasure> earlier) {}

  /**
   * Settles.
   *
   * @param looked the photos, as corrected
   * @param corrections which of them were
   * @param doubts what the stations' charts say
   * @param farm the book
   * @return what became of them
   */
  static SettlePhotos of(Looked looked, Corrections corrections, StationDoubts doubts, Farm farm) {
    List<PhotoMeasure> run = looked.run();
    List<PhotoMeasure> all = new ArrayList<>(run);
    all.addAll(looked.earlier());
    NavigableSet<LocalDate> evenings = Summarise.evenings(run, farm);
    List<PhotoMeasure> photos = new ArrayList<>();
    Map<String, SettleHalfTurns.Outcome> changed = new HashMap<>();
    List<SettleHalfTurns.Outcome> turned =
        SettleHalfTurns.settle(all.stream().map(doubts::settled).toList(), farm);
    List<PhotoMeasure> split =
        SettleBorders.settle(turned.stream().map(SettleHalfTurns.Outcome::photo).toList(), farm);
    for (int i = 0; i < turned.size(); i++) {
      PhotoMeasure photo = split.get(i);
      boolean tonight = photo.takenAt().map(farm::evening).filter(evenings::contains).isPresent();
      if (i < run.size() || tonight) {
        photos.add(photo);
      }
      boolean renamed = !corrections.of(Set.of(photo.sha256())).isEmpty();
      if (turned.get(i).changed() || doubts.holds(all.get(i)) || renamed) {
        // Pictures show where the photo itself splits plants, so that each run draws them alike.
        changed.put(photo.sha256(), turned.get(i));
      }
    }
    return new SettlePhotos(CountOnce.settle(photos, farm::evening), changed);
  }

  /** Returns the photos that the history has of the rafts of a run, other than the run's own. */
  private static List<PhotoMeasure> earlier(Measures measures, List<PhotoMeasure> run)
      throws IOException {
    TreeSet<String> hashes = new TreeSet<>();
    run.forEach(p -> hashes.add(p.sha256()));
    NavigableSet<String> rafts = new TreeSet<>();
    run.forEach(p -> p.rafts().forEach(r -> r.raft().ifPresent(rafts::add)));
    List<PhotoMeasure> earlier = new ArrayList<>();
    for (String raft : rafts) {
      measures.findRaft(raft).stream()
          .map(kept -> kept.measure())
          .filter(p -> hashes.add(p.sha256()))
          .forEach(earlier::add);
    }
    return earlier;
  }
}
