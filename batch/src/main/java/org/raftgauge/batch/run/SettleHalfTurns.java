// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SettleTurns;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;
import org.raftgauge.core.site.SiteMeasure;

/**
 * Settles over all that is known of each raft which way round it lay on photos that do not tell,
 * anew on every run: the history keeps measures as the first pass made them.
 */
final class SettleHalfTurns {
  private static final Comparator<Place> IN_TIME =
      Comparator.<Place, java.time.Instant>comparing(p -> p.photo().takenAt().get().toInstant())
          .thenComparing(p -> p.photo().photo())
          .thenComparing(p -> p.photo().sha256())
          .thenComparingInt(Place::place);

  private final Farm farm;
  private final Map<Place, SettleTurns.Turn> turns = new HashMap<>();

  private SettleHalfTurns(Farm farm) {
    this.farm = farm;
  }

  /**
   * A photo with its rafts the right way round.
   *
   * @param photo the photo, rafts whose turn stays open held
   * @param turned places of the rafts whose sites were named from the other end
   * @param changed whether anything differs from the measure
   */
  record Outcome(PhotoMeasure photo, Set<Integer> turned, boolean changed) {}

  /**
   * Settles.
   *
   * @param photos every photo known of the rafts, of any evening, each of other bytes
   * @param farm the book
   * @return an outcome for each, in the same order
   */
  static List<Outcome> settle(List<PhotoMeasure> photos, Farm farm) {
    SettleHalfTurns settle = new SettleHalfTurns(farm);
    settle.byRaft(photos).values().forEach(settle::settle);
    return photos.stream().map(settle::outcome).toList();
  }

  private Map<String, List<Place>> byRaft(List<PhotoMeasure> photos) {
    Map<String, List<Place>> byRaft = new TreeMap<>();
    for (PhotoMeasure photo : photos) {
      for (int place = 0; place < photo.rafts().size() && takesPart(photo); place++) {
        Optional<String> raft = photo.rafts().get(place).raft();
        Place at = new Place(photo, place);
        if (raft.isPresent()) {
          byRaft.computeIfAbsent(raft.get(), r -> new ArrayList<>()).add(at);
        } else if (open(at.raft()) && at.raft().poseSource() != PoseSource.SLOT) {
          turns.put(at, new SettleTurns.Turn(false, SettleTurns.NO_EVENING_BEFORE));
        }
      }
    }
    byRaft.values().removeIf(places -> places.stream().noneMatch(p -> open(p.raft())));
    return byRaft;
  }

  private static boolean takesPart(PhotoMeasure photo) {
    return photo.status() == PhotoStatus.USED && photo.takenAt().isPresent();
  }

  private static boolean open(RaftMeasure raft) {
    return !raft.halfTurnKnown() && raft.held().isEmpty();
  }

  private void settle(List<Place> places) {
    places.sort(IN_TIME);
    List<SettleTurns.Turn> settled = SettleTurns.settle(places.stream().map(this::look).toList());
    for (int i = 0; i < places.size(); i++) {
      turns.put(places.get(i), settled.get(i));
    }
  }

  private SettleTurns.Look look(Place place) {
    RaftMeasure raft = place.raft();
    String id = raft.raft().orElseThrow();
    Map<SiteId, String> plants = new HashMap<>();
    for (SiteMeasure site : raft.sites()) {
      farm.plantAt(id, site.site(), place.photo().takenAt().get())
          .ifPresent(plant -> plants.put(site.site(), plant.plant()));
    }
    long crops =
        farm.plantingsOn(id, farm.evening(place.photo().takenAt().get())).stream()
            .map(p -> CropBook.cropKey(p.crop(), p.variety()))
            .distinct()
            .count();
    return new SettleTurns.Look(raft, place.photo().station(), plants, (int) crops);
  }

  private Outcome outcome(PhotoMeasure photo) {
    List<RaftMeasure> rafts = new ArrayList<>();
    Set<Integer> turned = new TreeSet<>();
    Set<String> held = new TreeSet<>();
    for (int place = 0; place < photo.rafts().size(); place++) {
      RaftMeasure raft = photo.rafts().get(place);
      SettleTurns.Turn turn = turns.get(new Place(photo, place));
      if (turn != null && turn.turned()) {
        turned.add(place);
        rafts.add(raft.turned());
      } else if (turn != null && !turn.held().isEmpty()) {
        held.add(turn.held());
        rafts.add(raft.withHeld(turn.held()));
      } else {
        rafts.add(raft);
      }
    }
    boolean changed = !turned.isEmpty() || !held.isEmpty();
    return new Outcome(changed ? with(photo, rafts, held) : photo, turned, changed);
  }

  private static PhotoMeasure with(PhotoMeasure photo, List<RaftMeasure> rafts, Set<String> held) {
    PhotoMeasure settled = photo.withRafts(rafts);
    if (held.isEmpty()) {
      return settled;
    }
    boolean allHeld = rafts.stream().noneMatch(r -> r.held().isEmpty());
    String why = held.stream().collect(Collectors.joining("; "));
    return Rows.with(
        settled,
        new Say(
            allHeld ? PhotoStatus.HELD : photo.status(),
            Rows.joined(photo.reason(), why),
            Rows.joined(photo.remedy(), SettleTurns.REMEDY)));
  }

  /** A raft of a photo. */
  private record Place(PhotoMeasure photo, int place) {
    RaftMeasure raft() {
      return photo.rafts().get(place);
    }

    // The whole measure is a costly key; its bytes' hash says as much.
    @Override
    public boolean equals(Object other) {
      return other instanceof Place p
          && p.place == place
          && p.photo.sha256().equals(photo.sha256());
    }

    @Override
    public int hashCode() {
      return 31 * photo.sha256().hashCode() + place;
    }
  }
}
