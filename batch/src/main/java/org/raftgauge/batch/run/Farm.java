// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.report.SitePlant;

/** What a run asks of the crop book. */
public interface Farm {

  /** Returns the farm's time zone. */
  ZoneId zone();

  /** Returns the local time at which the farm's day starts. */
  LocalTime dayStartsAt();

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
   * Returns the rafts that should be photographed on an evening.
   *
   * @param evening the farm's day
   * @return their ids, sorted
   */
  NavigableSet<String> expectedRafts(LocalDate evening);

  /** Returns a hash of every file of the book that the grower keeps. */
  String bookHash();

  /**
   * Returns the farm's day that a moment belongs to: the day before until {@link #dayStartsAt()}.
   *
   * @param at the moment
   * @return the evening
   */
  default LocalDate evening(OffsetDateTime at) {
    var local = at.atZoneSameInstant(zone()).toLocalDateTime();
    LocalDate day = local.toLocalDate();
    return local.toLocalTime().isBefore(dayStartsAt()) ? day.minusDays(1) : day;
  }
}
