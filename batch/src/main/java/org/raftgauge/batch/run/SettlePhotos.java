// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.raftgauge.batch.store.History;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * The second pass: settles a run's photos against each other and against what the history knows of
 * their rafts.
 *
 * @param photos the run's photos and earlier ones of their evenings, each of other bytes
 * @param changed those whose rafts had to be turned, or held for their turn or station, by hash
 */
record SettlePhotos(List<Settled> photos, Map<String, SettleHalfTurns.Outcome> changed) {

  /**
   * Settles.
   *
   * @param history what was measured so far
   * @param measured the run's photos
   * @param doubts what the stations' charts say
   * @param farm the book
   * @return what became of them
   * @throws IOException if the history cannot be read
   */
  static SettlePhotos of(History history, List<Measured> measured, StationDoubts doubts, Farm farm)
      throws IOException {
    List<PhotoMeasure> run = FinalPhotos.distinct(measured);
    return of(run, earlier(history, run), doubts, farm);
  }

  /**
   * Settles.
   *
   * @param run the run's photos, each of other bytes
   * @param earlier other photos of their rafts
   * @param doubts what the stations' charts say
   * @param farm the book
   * @return what became of them
   */
  static SettlePhotos of(
      List<PhotoMeasure> run, List<PhotoMeasure> earlier, StationDoubts doubts, Farm farm) {
    List<PhotoMeasure> all = new ArrayList<>(run);
    all.addAll(earlier);
    NavigableSet<LocalDate> evenings = Summarise.evenings(run, farm);
    List<PhotoMeasure> photos = new ArrayList<>();
    Map<String, SettleHalfTurns.Outcome> changed = new HashMap<>();
    List<SettleHalfTurns.Outcome> turned =
        SettleHalfTurns.settle(all.stream().map(doubts::settled).toList(), farm);
    for (int i = 0; i < turned.size(); i++) {
      PhotoMeasure photo = turned.get(i).photo();
      boolean tonight = photo.takenAt().map(farm::evening).filter(evenings::contains).isPresent();
      if (i < run.size() || tonight) {
        photos.add(photo);
      }
      if (turned.get(i).changed() || doubts.holds(all.get(i))) {
        changed.put(photo.sha256(), turned.get(i));
      }
    }
    return new SettlePhotos(CountOnce.settle(photos, farm::evening), changed);
  }

  /** Returns the photos that the history has of the rafts of a run, other than the run's own. */
  private static List<PhotoMeasure> earlier(History history, List<PhotoMeasure> run)
      throws IOException {
    TreeSet<String> hashes = new TreeSet<>();
    run.forEach(p -> hashes.add(p.sha256()));
    NavigableSet<String> rafts = new TreeSet<>();
    run.forEach(p -> p.rafts().forEach(r -> r.raft().ifPresent(rafts::add)));
    List<PhotoMeasure> earlier = new ArrayList<>();
    for (String raft : rafts) {
      history.findRaft(raft).stream()
          .map(kept -> kept.measure())
          .filter(p -> hashes.add(p.sha256()))
          .forEach(earlier::add);
    }
    return earlier;
  }
}
