// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.core.book.Garden.Spot;
import org.raftgauge.core.book.PlantLife.Ending;
import org.raftgauge.core.book.Timeline.Step;
import org.raftgauge.core.problem.Findings;
import org.raftgauge.core.problem.NearestSpelling;

/**
 * Plays plantings and events through in the order of time: which plant stood where and when.
 *
 * <p>At the beginning of a farm's day first plantings end, then plantings start; events come at
 * their own time, those of a date alone right after. Moved, weighed and harvested speak of the
 * plants of a planting that ended that same day, where there are such.
 */
final class Ledger {
  private static final Set<Event.Kind> MAY_COME_ON_THE_LAST_DAY =
      Set.of(Event.Kind.MOVED, Event.Kind.WEIGHED, Event.Kind.HARVESTED);

  private final List<PlantingRow> rows;
  private final Map<String, List<Layout>> layouts;
  private final FarmDay farmDay;
  private final Findings findings;
  private final Garden garden = new Garden();
  private final List<PlantingRow> unlisted = new ArrayList<>();
  private final Set<String> rafts = new TreeSet<>();
  private final Rafts named;
  private final Timeline timeline;
  private final Moves moves;

  Ledger(LedgerInput input) {
    this.rows = input.rows();
    this.layouts = input.layouts();
    this.farmDay = input.farmDay();
    this.named = input.rafts();
    this.timeline = new Timeline(input.findings(), named);
    this.findings = timeline.findings();
    this.moves = new Moves(garden, input.reportingTo(findings));
    rows.forEach(row -> rafts.add(row.planting().raft()));
  }

  /** Who stood where, and which planting on which raft. */
  record Outcome(List<PlantLife> plants, List<Tenure> tenures) {}

  Outcome play(List<Event> events) {
    List<Step> steps = new ArrayList<>();
    for (PlantingRow row : rows) {
      Instant start = farmDay.start(row.planting().startsOn());
      Set<String> raft = Set.of(row.planting().raft());
      steps.add(new Step(start, 1, row.line(), raft, () -> start(row, start)));
      row.planting()
          .endedOn()
          .map(farmDay::start)
          .ifPresent(
              end ->
                  steps.add(
                      new Step(end, 0, row.line(), raft, () -> garden.end(row.planting(), end))));
    }
    for (Event event : events) {
      Instant at = event.at().toInstant();
      steps.add(new Step(at, 2, event.line(), event.rafts(), () -> happen(event)));
    }
    timeline.play(steps);
    List<PlantLife> lives = garden.lives();
    return new Outcome(lives, Tenures.of(lives, unlisted, farmDay));
  }

  private void start(PlantingRow row, Instant at) {
    Planting planting = row.planting();
    Optional<Layout> layout = Layouts.inForce(layouts, planting.layout(), planting.startsOn());
    if (layout.isEmpty()) {
      unlisted.add(row);
      named.doubt(List.of(planting.raft()));
      return;
    }
    String taken = "";
    for (SiteId site : layout.get().grid().sites()) {
      if (planting.holds(site)) {
        Spot spot = new Spot(planting.raft(), site);
        Optional<Growing> before = garden.at(spot);
        boolean moved = before.filter(Growing::hasMoved).isPresent();
        taken = moved && taken.isEmpty() ? spot + " holds " + before.get().plant() : taken;
        before.ifPresent(growing -> garden.leave(growing, at, Ending.ENDED));
        begin(planting, site, at, planting.sownOn());
      }
    }
    if (!taken.isEmpty()) {
      findings.error(
          "plantings.csv:" + row.line() + ": column raft",
          taken + ", which was moved there",
          "write in events.csv what became of that plant (harvested, died, moved)");
    }
  }

  private void begin(Planting planting, SiteId site, Instant at, Optional<LocalDate> sownOn) {
    LocalDate day = farmDay.evening(at);
    String id = garden.newId(planting.raft() + "/" + site + "/" + day);
    Optional<LocalDate> transplantedOn = planting.transplantedOn().map(given -> day);
    garden.begin(new Growing(id, sownOn, transplantedOn), planting, site, at);
  }

  private void happen(Event event) {
    if (!rafts.contains(event.raft()) && !named.isDoubtful(event.raft())) {
      findings.error(
          place(event, "raft"),
          "the raft \"" + event.raft() + "\" is unknown",
          NearestSpelling.remedy(event.raft(), rafts));
      return;
    }
    if (unlisted.stream().anyMatch(row -> row.planting().raft().equals(event.raft()))
        || event.kind() == Event.Kind.CLEANED) {
      return;
    }
    Instant at = event.at().toInstant();
    switch (event.kind()) {
      case MOVED -> {
        moves.move(event, concerned(event));
        rafts.addAll(event.target().rafts());
      }
      case REPLACED -> replace(event, at);
      case THINNED -> {
        List<Growing> plants = concerned(event);
        if (!event.sites().isEmpty() && !event.keepsPlants()) {
          plants.forEach(growing -> garden.leave(growing, at, Ending.THINNED));
        }
      }
      case CUT -> concerned(event).forEach(growing -> growing.cut(at));
      case WEIGHED -> {
        List<Growing> plants = concerned(event);
        if (!event.keepsPlants()) {
          plants.forEach(growing -> garden.leave(growing, at, Ending.WEIGHED));
        }
      }
      case HARVESTED -> concerned(event).forEach(g -> garden.leave(g, at, Ending.HARVESTED));
      case DIED -> concerned(event).forEach(g -> garden.leave(g, at, Ending.DIED));
      case CLEANED -> {}
    }
  }

  /** Finds the plants that an event speaks of, in order; reports sites without one. */
  private List<Growing> concerned(Event event) {
    List<Growing> plants = new ArrayList<>();
    if (event.sites().isEmpty()) {
      List<Spot> spots = garden.spotsEverOf(event.raft());
      spots.forEach(spot -> endedToday(spot, event).ifPresent(plants::add));
      if (plants.isEmpty()) {
        garden.spotsOf(event.raft()).forEach(spot -> garden.at(spot).ifPresent(plants::add));
      }
      if (plants.isEmpty()) {
        reportEmpty(event, "\"" + event.raft() + "\" holds no plant then");
      }
      return plants;
    }
    for (SiteId site : event.sites()) {
      Spot spot = new Spot(event.raft(), site);
      Optional<Growing> plant = endedToday(spot, event).or(() -> garden.at(spot));
      plant.ifPresentOrElse(plants::add, () -> reportEmpty(event, noPlant(spot)));
    }
    return plants;
  }

  private Optional<Growing> endedToday(Spot spot, Event event) {
    return garden
        .endedLast(spot)
        .filter(growing -> MAY_COME_ON_THE_LAST_DAY.contains(event.kind()))
        .filter(growing -> growing.lastStay().ending() == Ending.ENDED)
        .filter(
            growing ->
                growing
                    .lastStay()
                    .to()
                    .map(to -> farmDay.evening(to).equals(farmDay.evening(event.at().toInstant())))
                    .orElse(false));
  }

  private String noPlant(Spot spot) {
    String before =
        garden
            .lastStayAt(spot)
            .flatMap(
                stay ->
                    stay.to()
                        .map(
                            to ->
                                " ("
                                    + Endings.past(stay.ending())
                                    + " on "
                                    + farmDay.evening(to)
                                    + ")"))
            .orElse("");
    return "\"" + spot + "\" holds no plant then" + before;
  }

  private void reportEmpty(Event event, String found) {
    findings.error(place(event, "site"), found, "mend at, raft or site, or delete the row");
  }

  private void replace(Event event, Instant at) {
    List<SiteId> sites =
        event.sites().isEmpty()
            ? garden.spotsOf(event.raft()).stream().map(Spot::site).toList()
            : event.sites();
    if (sites.isEmpty()) {
      reportEmpty(event, "\"" + event.raft() + "\" holds no plant then");
    }
    for (SiteId site : sites) {
      Spot spot = new Spot(event.raft(), site);
      Optional<Planting> planting = plantingFor(spot, event);
      garden.at(spot).ifPresent(growing -> garden.leave(growing, at, Ending.REPLACED));
      planting.ifPresentOrElse(
          p -> {
            boolean tray = p.transplantedOn().isEmpty();
            begin(p, site, at, tray ? Optional.of(farmDay.evening(at)) : Optional.empty());
          },
          () -> reportEmpty(event, "\"" + spot + "\" belongs to no planting then"));
    }
  }

  /** Finds the planting that a new plant joins: of what stands or stood there, or of the row. */
  private Optional<Planting> plantingFor(Spot spot, Event event) {
    Optional<Planting> present =
        garden
            .lastStayAt(spot)
            .filter(stay -> stay.ending() != Ending.ENDED && stay.ending() != Ending.MOVED)
            .map(PlantLife.Stay::planting);
    LocalDate evening = farmDay.evening(event.at().toInstant());
    return present.or(
        () ->
            rows.stream()
                .map(PlantingRow::planting)
                .filter(p -> p.raft().equals(spot.raft()) && p.holdsOn(evening))
                .filter(p -> p.holds(spot.site()) && Layouts.has(layouts, p, spot.site()))
                .findFirst());
  }

  static String place(Event event, String column) {
    return "events.csv:" + event.line() + ": column " + column;
  }
}
