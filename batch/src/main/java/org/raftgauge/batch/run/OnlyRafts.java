// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.report.SitePlant;

/**
 * A farm of which a run is asked about some rafts alone: it expects no others on its photos. All
 * else is the whole farm's.
 *
 * @param farm the whole farm
 * @param rafts the rafts asked about
 */
public record OnlyRafts(Farm farm, Set<String> rafts) implements Farm {

  /** Copies the set. */
  public OnlyRafts {
    rafts = Set.copyOf(rafts);
  }

  @Override
  public NavigableSet<String> expectedRafts(LocalDate evening) {
    NavigableSet<String> expected = new TreeSet<>(farm.expectedRafts(evening));
    expected.retainAll(rafts);
    return expected;
  }

  @Override
  public FarmDay farmDay() {
    return farm.farmDay();
  }

  @Override
  public List<Planting> plantingsOn(String raft, LocalDate evening) {
    return farm.plantingsOn(raft, evening);
  }

  @Override
  public Optional<SitePlant> plantAt(String raft, SiteId site, OffsetDateTime at) {
    return farm.plantAt(raft, site, at);
  }

  @Override
  public Map<SiteId, SitePlant> plantsOn(String raft, Collection<SiteId> sites, OffsetDateTime at) {
    return farm.plantsOn(raft, sites, at);
  }

  @Override
  public CropBook book() {
    return farm.book();
  }

  @Override
  public Farm asOf(LocalDate evening) {
    return new OnlyRafts(farm.asOf(evening), rafts);
  }

  @Override
  public String bookHash() {
    return farm.bookHash();
  }
}
