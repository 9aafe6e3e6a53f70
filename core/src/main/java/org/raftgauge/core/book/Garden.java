// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.book.PlantLife.Ending;
import org.raftgauge.core.book.PlantLife.Stay;

/** What stands where at the moment that the ledger has come to, and all that ever stood. */
final class Garden {

  /** A site of a raft. */
  record Spot(String raft, SiteId site) {
    @Override
    public String toString() {
      return site + " of " + raft;
    }
  }

  // By raft: a farm's plants are too many to look through for each event.
  private final Map<String, Map<Spot, Growing>> standing = new HashMap<>();
  private final Map<String, Map<Spot, Growing>> latest = new HashMap<>();
  private final Map<String, List<Growing>> begun = new HashMap<>();
  private final Map<Spot, Growing> ended = new HashMap<>();
  private final Set<Growing> all = new LinkedHashSet<>();
  private final Set<String> ids = new HashSet<>();

  Optional<Growing> at(Spot spot) {
    return Optional.ofNullable(of(standing, spot.raft()).get(spot));
  }

  /** Returns the last stay at a spot, ended or not; the plant may stand elsewhere since. */
  Optional<Stay> lastStayAt(Spot spot) {
    return Optional.ofNullable(of(latest, spot.raft()).get(spot))
        .flatMap(growing -> growing.lastStayAt(spot));
  }

  /** Returns the plant that ended last at a spot by its planting's row. */
  Optional<Growing> endedLast(Spot spot) {
    return Optional.ofNullable(ended.get(spot));
  }

  /** Returns the spots of a raft that hold a plant, in grid order. */
  List<Spot> spotsOf(String raft) {
    return inOrder(standing, raft);
  }

  /** Returns the spots of a raft that hold or held a plant, in grid order. */
  List<Spot> spotsEverOf(String raft) {
    return inOrder(latest, raft);
  }

  private static List<Spot> inOrder(Map<String, Map<Spot, Growing>> map, String raft) {
    return of(map, raft).keySet().stream().sorted(Comparator.comparing(Spot::site)).toList();
  }

  private static Map<Spot, Growing> of(Map<String, Map<Spot, Growing>> map, String raft) {
    return map.computeIfAbsent(raft, r -> new LinkedHashMap<>());
  }

  /** Makes an id of raft, site and day; a second plant of the same gets a number behind it. */
  String newId(String wanted) {
    String id = wanted;
    for (int n = 2; !ids.add(id); n++) {
      id = wanted + "/" + n;
    }
    return id;
  }

  void begin(Growing growing, Planting planting, SiteId site, Instant at) {
    all.add(growing);
    begun.computeIfAbsent(planting.raft(), r -> new ArrayList<>()).add(growing);
    arrive(growing, planting, site, at);
  }

  void arrive(Growing growing, Planting planting, SiteId site, Instant at) {
    Spot spot = new Spot(planting.raft(), site);
    growing.arrive(planting, site, at);
    of(standing, spot.raft()).put(spot, growing);
    of(latest, spot.raft()).put(spot, growing);
  }

  /** Takes a plant from where it stands or, where its stay has ended, changes the reason. */
  void leave(Growing growing, Instant at, Ending ending) {
    Stay stay = growing.lastStay();
    Spot spot = new Spot(stay.planting().raft(), stay.site());
    of(standing, spot.raft()).remove(spot, growing);
    ended.remove(spot, growing);
    if (ending == Ending.ENDED) {
      ended.put(spot, growing);
    }
    growing.leave(at, ending);
  }

  /** Ends all that stands as part of a planting. */
  void end(Planting planting, Instant at) {
    List<Growing> own =
        of(standing, planting.raft()).values().stream()
            .filter(growing -> growing.lastStay().planting().equals(planting))
            .toList();
    own.forEach(growing -> leave(growing, at, Ending.ENDED));
  }

  /** Forgets the plants with which a planting began: others were moved there in their stead. */
  void forget(Planting planting) {
    List<Growing> onRaft = begun.computeIfAbsent(planting.raft(), r -> new ArrayList<>());
    List<Growing> gone =
        onRaft.stream()
            .filter(g -> !g.hasMoved() && g.lastStay().planting().equals(planting))
            .toList();
    onRaft.removeAll(gone);
    gone.forEach(all::remove);
    of(standing, planting.raft()).values().removeAll(gone);
    of(latest, planting.raft()).values().removeAll(gone);
    gone.forEach(growing -> ids.remove(growing.plant()));
  }

  List<PlantLife> lives() {
    return all.stream().map(Growing::toLife).toList();
  }
}
