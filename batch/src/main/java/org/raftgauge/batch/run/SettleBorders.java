// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SettleSplits;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.report.SitePlant;

/**
 * Settles over all that is known of each raft where its plants' borders run, anew on every run: the
 * history keeps measures as the first pass made them.
 */
final class SettleBorders {
  private final Farm farm;
  private final Map<RaftPlace, RaftMeasure> settled = new HashMap<>();

  private SettleBorders(Farm farm) {
    this.farm = farm;
  }

  /**
   * Settles.
   *
   * @param photos every photo known of the rafts, of any evening, each of other bytes, its rafts
   *     the right way round
   * @param farm the book
   * @return the same photos in the same order, areas as settled
   */
  static List<PhotoMeasure> settle(List<PhotoMeasure> photos, Farm farm) {
    SettleBorders settle = new SettleBorders(farm);
    List<List<RaftPlace>> bordered =
        RaftPlace.byRaft(photos).values().stream()
            .filter(places -> places.stream().anyMatch(p -> !p.raft().borders().isEmpty()))
            .toList();
    List<List<RaftMeasure>> rafts = new OnAllCores().map(bordered, settle::settled);
    for (int i = 0; i < rafts.size(); i++) {
      settle.keep(bordered.get(i), rafts.get(i));
    }
    return photos.stream().map(settle::photo).toList();
  }

  private List<RaftMeasure> settled(List<RaftPlace> places) {
    return SettleSplits.settle(places.stream().map(this::look).toList());
  }

  /** Keeps what changed; a look as it was says so by being the same. */
  @SuppressWarnings("ReferenceEquality")
  private void keep(List<RaftPlace> places, List<RaftMeasure> rafts) {
    for (int i = 0; i < places.size(); i++) {
      if (rafts.get(i) != places.get(i).raft()) {
        settled.put(places.get(i), rafts.get(i));
      }
    }
  }

  private SettleSplits.Look look(RaftPlace place) {
    Map<SiteId, SettleSplits.Standing> plants = new HashMap<>();
    place.plants(farm).forEach((site, plant) -> plants.put(site, standing(plant)));
    return new SettleSplits.Look(place.raft(), place.takenAt().toInstant(), plants);
  }

  private static SettleSplits.Standing standing(SitePlant plant) {
    String crop = CropBook.cropKey(plant.planting().crop(), plant.planting().variety());
    return new SettleSplits.Standing(plant.plant(), crop);
  }

  private PhotoMeasure photo(PhotoMeasure photo) {
    List<RaftMeasure> rafts = new ArrayList<>();
    boolean changed = false;
    for (int place = 0; place < photo.rafts().size(); place++) {
      Optional<RaftMeasure> now = Optional.ofNullable(settled.get(new RaftPlace(photo, place)));
      rafts.add(now.orElse(photo.rafts().get(place)));
      changed |= now.isPresent();
    }
    return changed ? photo.withRafts(rafts) : photo;
  }
}
