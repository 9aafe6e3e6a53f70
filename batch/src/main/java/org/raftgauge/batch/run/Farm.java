// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.report.SitePlant;

/** What a run asks of the crop book. */
public interface Farm {

  /** Returns the farm's clock: its time zone and when its day begins. */
  FarmDay farmDay();

  /** Returns the farm's time zone. */
  default ZoneId zone() {
    return farmDay().zone();
  }

  /**
   * Returns the plantings on a raft on an evening.
   *
   * @param raft its id
   * @param evening the farm's day
   * @return none where the raft is unknown or its plantings have ended
   */
  List<Planting> plantingsOn(String raft, LocalDate evening);

  /**
   * Says what stands at a site.
   *
   * @param raft the raft's id
   * @param site the site
   * @param at when
   * @return nothing where nothing is planted there
   */
  Optional<SitePlant> plantAt(String raft, SiteId site, OffsetDateTime at);

  /**
   * Says what stands on a raft.
   *
   * @param raft the raft's id
   * @param sites those asked about
   * @param at when
   * @return the planted ones among the sites, with their plants
   */
  default Map<SiteId, SitePlant> plantsOn(
      String raft, Collection<SiteId> sites, OffsetDateTime at) {
    Map<SiteId, SitePlant> plants = new HashMap<>();
    sites.forEach(site -> plantAt(raft, site, at).ifPresent(p -> plants.put(site, p)));
    return plants;
  }

  /**
   * Returns the rafts that should be photographed on an evening.
   *
   * @param evening the farm's day
   * @return their ids, sorted
   */
  NavigableSet<String> expectedRafts(LocalDate evening);

  /** Returns the crop book. */
  CropBook book();

  /**
   * Returns the farm as it could be known when an evening ended.
   *
   * @param evening the farm's day
   * @return the same farm without anything later
   */
  Farm asOf(LocalDate evening);

  /** Returns a hash of every file of the book that the grower keeps. */
  String bookHash();

  /**
   * Returns the farm's day that a moment belongs to.
   *
   * @param at the moment
   * @return the evening
   */
  default LocalDate evening(OffsetDateTime at) {
    return farmDay().evening(at.toInstant());
  }
}
