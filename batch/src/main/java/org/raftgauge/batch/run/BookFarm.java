// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import org.raftgauge.core.book.BookAsOf;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.WhoGrewWhere;
import org.raftgauge.core.report.SitePlant;

/** Answers what a run asks of the farm from a crop book. */
public final class BookFarm implements Farm {
  private final CropBook book;
  private final WhoGrewWhere plants;
  private final String hash;

  /**
   * Wraps a book.
   *
   * @param book the book
   * @param hash hash of its files
   */
  public BookFarm(CropBook book, String hash) {
    this.book = book;
    this.plants = WhoGrewWhere.of(book);
    this.hash = hash;
  }

  @Override
  public FarmDay farmDay() {
    return book.farmDay();
  }

  @Override
  public List<Planting> plantingsOn(String raft, LocalDate evening) {
    return book.plantingsOn(raft, evening);
  }

  @Override
  public Optional<SitePlant> plantAt(String raft, SiteId site, OffsetDateTime at) {
    return plants
        .at(raft, site, at.toInstant())
        .map(g -> new SitePlant(g.planting(), g.plant(), g.age()));
  }

  @Override
  public Map<SiteId, SitePlant> plantsOn(String raft, Collection<SiteId> sites, OffsetDateTime at) {
    Map<SiteId, SitePlant> on = new HashMap<>();
    plants
        .at(raft, sites, at.toInstant())
        .forEach((site, g) -> on.put(site, new SitePlant(g.planting(), g.plant(), g.age())));
    return on;
  }

  @Override
  public NavigableSet<String> expectedRafts(LocalDate evening) {
    return book.expectedRafts(evening);
  }

  @Override
  public CropBook book() {
    return book;
  }

  @Override
  public Farm asOf(LocalDate evening) {
    return new BookFarm(BookAsOf.of(book, evening), hash);
  }

  @Override
  public String bookHash() {
    return hash;
  }
}
