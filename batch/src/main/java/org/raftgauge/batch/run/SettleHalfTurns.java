// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.SettleTurns;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.PhotoStatus;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.plane.PoseSource;

/**
 * Settles over all that is known of each raft which way round it lay on photos that do not tell,
 * anew on every run: the history keeps measures as the first pass made them.
 */
final class SettleHalfTurns {
  private final Farm farm;
  private final Map<RaftPlace, SettleTurns.Turn> turns = new HashMap<>();

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
    settle.nameless(photos);
    RaftPlace.byRaft(photos).values().stream()
        .filter(places -> places.stream().anyMatch(p -> open(p.raft())))
        .forEach(settle::settle);
    return photos.stream().map(settle::outcome).toList();
  }

  /** Nothing tells the turn of a raft without a name, unless its slot does. */
  private void nameless(List<PhotoMeasure> photos) {
    for (PhotoMeasure photo : photos) {
      for (int place = 0; place < photo.rafts().size() && RaftPlace.takesPart(photo); place++) {
        RaftMeasure raft = photo.rafts().get(place);
        boolean lost = raft.raft().isEmpty() && raft.poseSource() != PoseSource.SLOT;
        if (lost && open(raft)) {
          turns.put(
              new RaftPlace(photo, place),
              new SettleTurns.Turn(false, SettleTurns.NO_EVENING_BEFORE));
        }
      }
    }
  }

  private static boolean open(RaftMeasure raft) {
    return !raft.halfTurnKnown() && raft.held().isEmpty();
  }

  private void settle(List<RaftPlace> places) {
    List<SettleTurns.Turn> settled = SettleTurns.settle(places.stream().map(this::look).toList());
    for (int i = 0; i < places.size(); i++) {
      turns.put(places.get(i), settled.get(i));
    }
  }

  private SettleTurns.Look look(RaftPlace place) {
    RaftMeasure raft = place.raft();
    String id = raft.raft().orElseThrow();
    Map<SiteId, String> plants = new HashMap<>();
    place.plants(farm).forEach((site, plant) -> plants.put(site, plant.plant()));
    long crops =
        farm.plantingsOn(id, farm.evening(place.takenAt())).stream()
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
      SettleTurns.Turn turn = turns.get(new RaftPlace(photo, place));
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
}
