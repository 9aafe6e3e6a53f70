// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.raftgauge.core.book.Garden.Spot;
import org.raftgauge.core.book.PlantLife.Ending;
import org.raftgauge.core.problem.Findings;

/**
 * Moves plants in the ledger.
 *
 * <p>With sites and target sites named, and one target raft, they go in pairs. Otherwise the plants
 * fill, in order, the target sites named or else the free sites in grid order, raft after raft.
 * Where a planting of the same crop starts on a target raft on the day a whole raft is moved there,
 * that row describes the plants moved: it begins no plants of its own.
 */
final class Moves {
  private final Garden garden;
  private final List<PlantingRow> rows;
  private final Map<String, List<Layout>> layouts;
  private final FarmDay farmDay;
  private final Findings findings;
  private final Set<PlantingRow> continued = new HashSet<>();
  private final TargetLayouts targetLayouts;

  Moves(Garden garden, LedgerInput input) {
    this.garden = garden;
    this.rows = input.rows();
    this.layouts = input.layouts();
    this.farmDay = input.farmDay();
    this.findings = input.findings();
    this.targetLayouts = new TargetLayouts(input);
  }

  /**
   * Moves plants, each of which stands now or stood until this day; they stay where none is free.
   */
  void move(Event event, List<Growing> plants) {
    if (plants.isEmpty()) {
      return;
    }
    Planting source = plants.get(0).lastStay().planting();
    List<String> rafts =
        event.target().rafts().isEmpty() ? List.of(event.raft()) : event.target().rafts();
    if (event.sites().isEmpty()) {
      rafts.forEach(raft -> continueInto(raft, source, evening(event)));
    }
    List<Spot> targets = new ArrayList<>();
    rafts.stream().distinct().forEach(raft -> targets.addAll(spots(raft, event, source)));
    boolean inPairs =
        !event.sites().isEmpty() && !event.target().sites().isEmpty() && rafts.size() == 1;
    Map<Growing, Spot> placed =
        inPairs ? pair(event, plants, targets) : fill(event, plants, targets);
    place(event, placed);
  }

  private LocalDate evening(Event event) {
    return farmDay.evening(event.at().toInstant());
  }

  private void continueInto(String raft, Planting source, LocalDate evening) {
    rows.stream()
        .filter(row -> row.planting().raft().equals(raft))
        .filter(row -> row.planting().startsOn().equals(evening))
        .filter(row -> row.planting().crop().equals(source.crop()))
        .filter(row -> !row.planting().equals(source))
        .filter(continued::add)
        .forEach(row -> garden.forget(row.planting()));
  }

  private List<Spot> spots(String raft, Event event, Planting source) {
    Optional<Layout> layout =
        Layouts.inForce(layouts, targetLayouts.nameFor(raft, event, source), evening(event));
    if (layout.isEmpty()) {
      findings.error(
          Ledger.place(event, "to_raft"),
          "the layout of \"" + raft + "\" cannot be told",
          "fill in to_layout");
      return List.of();
    }
    List<SiteId> wanted = event.target().sites();
    for (SiteId site : wanted) {
      if (!layout.get().grid().has(site)) {
        findings.error(
            Ledger.place(event, "to_site"),
            Layouts.notOn(site, layout.get()),
            Layouts.span(layout.get()));
      }
    }
    return (wanted.isEmpty() ? layout.get().grid().sites() : wanted)
        .stream()
            .filter(site -> layout.get().grid().has(site))
            .map(site -> new Spot(raft, site))
            .toList();
  }

  private Map<Growing, Spot> pair(Event event, List<Growing> plants, List<Spot> targets) {
    List<SiteId> from = event.sites();
    List<SiteId> to = event.target().sites();
    if (from.size() != to.size()) {
      findings.error(
          Ledger.place(event, "to_site"),
          from.size() + " sites go to " + to.size(),
          "name a site for each, or leave to_site blank to fill the free ones in order");
      return Map.of();
    }
    String raft = event.target().rafts().isEmpty() ? event.raft() : event.target().rafts().get(0);
    Map<Growing, Spot> wanted = new LinkedHashMap<>();
    for (Growing growing : plants) {
      wanted.put(growing, new Spot(raft, to.get(from.indexOf(growing.lastStay().site()))));
    }
    wanted.values().retainAll(targets);
    Map<Growing, Spot> placed = settle(plants, moving -> freeOnly(wanted, moving));
    wanted.keySet().removeAll(placed.keySet());
    wanted.values().forEach(target -> reportOccupied(event, target));
    return placed;
  }

  private Map<Growing, Spot> freeOnly(Map<Growing, Spot> wanted, List<Growing> moving) {
    Map<Growing, Spot> free = new LinkedHashMap<>(wanted);
    free.keySet().retainAll(moving);
    free.values().removeIf(spot -> !isFree(spot, moving));
    return free;
  }

  private boolean isFree(Spot spot, List<Growing> moving) {
    return garden.at(spot).map(moving::contains).orElse(true);
  }

  private void reportOccupied(Event event, Spot target) {
    String holder = garden.at(target).map(Growing::plant).orElse("that goes there too");
    findings.error(
        Ledger.place(event, "to_site"),
        "\"" + target + "\" holds the plant " + holder,
        "write first what became of that plant (moved, harvested, died), or name another site");
  }

  private Map<Growing, Spot> fill(Event event, List<Growing> plants, List<Spot> targets) {
    Map<Growing, Spot> placed = settle(plants, moving -> firstFree(targets, moving));
    int left = plants.size() - placed.size();
    if (left > 0 && !targets.isEmpty()) {
      findings.error(
          Ledger.place(event, "to_raft"),
          left + " of " + plants.size() + " plants find no free site",
          "name more rafts, or write first what became of the plants there; they stay where they"
              + " are");
    }
    return placed;
  }

  private Map<Growing, Spot> firstFree(List<Spot> targets, List<Growing> moving) {
    List<Spot> free = targets.stream().filter(spot -> isFree(spot, moving)).toList();
    Map<Growing, Spot> placed = new LinkedHashMap<>();
    for (int i = 0; i < Math.min(moving.size(), free.size()); i++) {
      placed.put(moving.get(i), free.get(i));
    }
    return placed;
  }

  /** Places plants again until none counts on a site of one that has to stay where it is. */
  private static Map<Growing, Spot> settle(
      List<Growing> plants, Function<List<Growing>, Map<Growing, Spot>> attempt) {
    List<Growing> moving = plants;
    Map<Growing, Spot> placed = attempt.apply(moving);
    while (placed.size() < moving.size()) {
      moving = List.copyOf(placed.keySet());
      placed = attempt.apply(moving);
    }
    return placed;
  }

  private void place(Event event, Map<Growing, Spot> placed) {
    Instant at = event.at().toInstant();
    Map<Growing, Planting> homes = new LinkedHashMap<>();
    placed.forEach((growing, spot) -> homes.put(growing, home(event, placed, growing)));
    placed.keySet().forEach(growing -> garden.leave(growing, at, Ending.MOVED));
    placed.forEach(
        (growing, spot) -> {
          Planting home = homes.get(growing);
          if (!spot.raft().equals(event.raft())) {
            growing.transplantIfNever(home.transplantedOn().orElse(evening(event)));
          }
          garden.arrive(growing, home, spot.site(), at);
        });
  }

  /**
   * Finds the row that a plant belongs to at its new site, or makes a planting of what is known.
   */
  private Planting home(Event event, Map<Growing, Spot> placed, Growing growing) {
    Spot spot = placed.get(growing);
    Planting source = growing.lastStay().planting();
    List<Planting> there =
        rows.stream()
            .map(PlantingRow::planting)
            .filter(p -> p.raft().equals(spot.raft()) && p.holdsOn(evening(event)))
            .toList();
    Optional<Planting> row =
        there.stream()
            .filter(p -> p.holds(spot.site()) && p.crop().equals(source.crop()))
            .filter(p -> isContinued(p) || p.variety().equals(source.variety()))
            .findFirst();
    return row.orElseGet(() -> implied(event, placed, growing, there));
  }

  private boolean isContinued(Planting planting) {
    return continued.stream().anyMatch(row -> row.planting().equals(planting));
  }

  private Planting implied(
      Event event, Map<Growing, Spot> placed, Growing growing, List<Planting> there) {
    String raft = placed.get(growing).raft();
    Planting source = growing.lastStay().planting();
    Set<SiteId> sites = new HashSet<>();
    placed.forEach(
        (other, spot) -> {
          if (spot.raft().equals(raft) && other.lastStay().planting().equals(source)) {
            sites.add(spot.site());
          }
        });
    boolean otherRaft = !raft.equals(event.raft());
    return new Planting(
        raft,
        there.stream().findFirst().map(Planting::pond).orElse(source.pond()),
        there.stream().findFirst().map(Planting::berth).orElse(""),
        source.crop(),
        source.variety(),
        targetLayouts.nameFor(raft, event, source),
        sites,
        source.sownOn(),
        otherRaft
            ? source.transplantedOn().or(() -> Optional.of(evening(event)))
            : source.transplantedOn(),
        source.harvestBy(),
        Optional.empty(),
        source.lot());
  }
}
