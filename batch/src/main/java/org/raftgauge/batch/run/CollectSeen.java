// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.batch.store.Settled;
import org.raftgauge.core.evening.RaftLook;
import org.raftgauge.core.evening.Seen;
import org.raftgauge.core.evening.StationDoubt;
import org.raftgauge.core.history.SiteLook;
import org.raftgauge.core.measure.PhotoMeasure;
import org.raftgauge.core.measure.RaftMeasure;
import org.raftgauge.core.site.SiteMeasure;

/** Settles photos of many evenings and collects what those that count said. */
final class CollectSeen {
  private final Farm farm;
  private final Repeatability repeatability;
  private final Set<RaftEvening> measured = new HashSet<>();
  private final List<RaftLook> rafts = new ArrayList<>();
  private final List<SiteLook> sites = new ArrayList<>();

  private record RaftEvening(String raft, LocalDate evening) {}

  private CollectSeen(Farm farm, Repeatability repeatability) {
    this.farm = farm;
    this.repeatability = repeatability;
  }

  /**
   * Settles and collects.
   *
   * @param photos of any evenings as measured, each of other bytes and with its time
   * @param doubts what the stations' charts say; those of later evenings too
   * @param farm the book
   * @return one look at most at a raft and evening, a held one where there is no other
   */
  static Seen of(List<PhotoMeasure> photos, StationDoubts doubts, Farm farm) {
    List<PhotoMeasure> fit = photos.stream().map(doubts::settled).toList();
    List<PhotoMeasure> straight =
        SettleHalfTurns.settle(fit, farm).stream().map(SettleHalfTurns.Outcome::photo).toList();
    List<PhotoMeasure> split = SettleBorders.settle(straight, farm);
    List<Settled> settled = CountOnce.settle(split, farm::evening);
    CollectSeen collect = new CollectSeen(farm, new Repeatability(settled, farm));
    settled.forEach(s -> collect.add(s, false));
    settled.forEach(s -> collect.add(s, true));
    List<StationDoubt> stations =
        doubts.on(
            photos.stream()
                .map(p -> farm.evening(p.takenAt().orElseThrow()))
                .collect(Collectors.toSet()));
    return new Seen(collect.rafts, collect.sites, stations);
  }

  /** Adds a photo's rafts that are held, or those that are not. */
  private void add(Settled settled, boolean held) {
    for (int place = 0; place < settled.rafts().size(); place++) {
      Settled.Outcome outcome = settled.rafts().get(place);
      RaftMeasure raft = settled.photo().rafts().get(place);
      boolean open = outcome.kind() == Settled.Kind.HELD && raft.held().isEmpty();
      RaftMeasure said = open ? raft.withHeld(outcome.why()) : raft;
      boolean wanted = held != said.held().isEmpty();
      if (wanted && said.raft().isPresent() && outcome.kind() != Settled.Kind.REPLACED) {
        add(settled.photo(), said);
      }
    }
  }

  private void add(PhotoMeasure photo, RaftMeasure raft) {
    String id = raft.raft().orElseThrow();
    var takenAt = photo.takenAt().orElseThrow();
    if (!measured.add(new RaftEvening(id, farm.evening(takenAt)))) {
      return;
    }
    RaftLook.Tag tag =
        raft.notes().contains(RaftMeasure.TAG_UNREAD) ? RaftLook.Tag.UNREAD : RaftLook.Tag.FINE;
    String doubt = raft.held().isEmpty() ? repeatability.contradiction(photo, raft) : "";
    rafts.add(new RaftLook(photo.photo(), photo.station(), id, takenAt, raft.held(), tag, doubt));
    for (SiteMeasure site : raft.sites()) {
      sites.add(new SiteLook(photo.photo(), photo.station(), id, takenAt, site));
    }
  }
}
