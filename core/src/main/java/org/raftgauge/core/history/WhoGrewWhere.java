// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.SiteId;

/**
 * Answers which plant stood at a site when, from the crop book's plantings and events. A plant that
 * was moved keeps its id and age; a site whose plant died, was harvested, taken out or moved away
 * is not planted until a new one comes.
 */
public final class WhoGrewWhere {
  private final FarmDay farmDay;
  private final Map<String, Map<SiteId, List<Stood>>> stood = new HashMap<>();
  private final Map<String, PlantLife> lives = new HashMap<>();
  private final Map<String, NavigableSet<SiteId>> sites = new HashMap<>();

  private record Stood(PlantLife life, PlantLife.Stay stay) {}

  private WhoGrewWhere(CropBook book) {
    this.farmDay = book.farmDay();
    for (PlantLife life : book.plants()) {
      lives.put(life.plant(), life);
      for (PlantLife.Stay stay : life.stays()) {
        String raft = stay.planting().raft();
        stood
            .computeIfAbsent(raft, name -> new HashMap<>())
            .computeIfAbsent(stay.site(), site -> new ArrayList<>())
            .add(new Stood(life, stay));
        sites.computeIfAbsent(raft, name -> new TreeSet<>()).add(stay.site());
      }
    }
  }

  /**
   * Prepares the answers.
   *
   * @param book the crop book
   * @return the answers for all its plants
   */
  public static WhoGrewWhere of(CropBook book) {
    return new WhoGrewWhere(book);
  }

  /**
   * Finds the plant at a site.
   *
   * @param raft the raft
   * @param site the site
   * @param at when
   * @return the plant, or nothing where the site is not planted then
   */
  public Optional<Grown> at(String raft, SiteId site, Instant at) {
    return on(raft, at).at(site);
  }

  /**
   * Finds the plants at some sites of a raft.
   *
   * @param raft the raft
   * @param asked the sites
   * @param at when
   * @return the plants by site; none for a site that is not planted then
   */
  public Map<SiteId, Grown> at(String raft, Collection<SiteId> asked, Instant at) {
    OnRaft on = on(raft, at);
    Map<SiteId, Grown> plants = new HashMap<>();
    asked.forEach(site -> on.at(site).ifPresent(grown -> plants.put(site, grown)));
    return plants;
  }

  /** Prepares the answers for the sites of a raft at an instant. */
  OnRaft on(String raft, Instant at) {
    return new OnRaft(stood.getOrDefault(raft, Map.of()), at);
  }

  /**
   * Finds the sites of a raft that are planted.
   *
   * @param raft the raft
   * @param at when
   * @return its planted sites in order
   */
  public NavigableSet<SiteId> plantedSites(String raft, Instant at) {
    NavigableSet<SiteId> planted = new TreeSet<>(sites.getOrDefault(raft, new TreeSet<>()));
    planted.removeIf(site -> this.at(raft, site, at).isEmpty());
    return Collections.unmodifiableNavigableSet(planted);
  }

  /**
   * Finds a plant's life.
   *
   * @param plant its id
   * @return where it stood and what was done to it, or nothing where there is no such plant
   */
  public Optional<PlantLife> life(String plant) {
    return Optional.ofNullable(lives.get(plant));
  }

  /** The plants of a raft at an instant; most of them count from the same days. */
  final class OnRaft {
    private final Map<SiteId, List<Stood>> sites;
    private final Instant at;
    private final LocalDateTime local;
    private Optional<LocalDate> lastDay = Optional.empty();
    private OptionalDouble lastDays = OptionalDouble.empty();

    private OnRaft(Map<SiteId, List<Stood>> sites, Instant at) {
      this.sites = sites;
      this.at = at;
      this.local = LocalDateTime.ofInstant(at, farmDay.zone());
    }

    /** Returns the date on the farm's clock. */
    LocalDate day() {
      return local.toLocalDate();
    }

    /** Finds the plant at a site. */
    Optional<Grown> at(SiteId site) {
      for (Stood one : sites.getOrDefault(site, List.of())) {
        if (one.stay().holdsAt(at)) {
          return Optional.of(grown(one));
        }
      }
      return Optional.empty();
    }

    private Grown grown(Stood stood) {
      PlantLife life = stood.life();
      Optional<LocalDate> lastCut = Optional.empty();
      for (Instant cut : life.cutAt()) {
        lastCut = cut.isAfter(at) ? lastCut : Optional.of(LocalDate.ofInstant(cut, farmDay.zone()));
      }
      return new Grown(
          life.plant(),
          stood.stay().planting(),
          daysAfter(life.transplantedOn()),
          daysAfter(life.sownOn()),
          daysAfter(lastCut));
    }

    private OptionalDouble daysAfter(Optional<LocalDate> day) {
      if (day.isEmpty()) {
        return OptionalDouble.empty();
      }
      if (!day.equals(lastDay)) {
        double days = FarmDay.daysAfter(day.get(), local);
        lastDay = day;
        lastDays = days >= 0 ? OptionalDouble.of(days) : OptionalDouble.empty();
      }
      return lastDays;
    }
  }
}
