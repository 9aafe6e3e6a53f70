// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.PlantLife.Ending;
import org.raftgauge.core.book.PlantLife.Stay;

/** A plant while the ledger is being written; {@link #toLife()} gives the record. */
final class Growing {
  private final String plant;
  private final Optional<LocalDate> sownOn;
  private Optional<LocalDate> transplantedOn;
  private final List<Instant> cutAt = new ArrayList<>();
  private final List<Stay> stays = new ArrayList<>();

  Growing(String plant, Optional<LocalDate> sownOn, Optional<LocalDate> transplantedOn) {
    this.plant = plant;
    this.sownOn = sownOn;
    this.transplantedOn = transplantedOn;
  }

  String plant() {
    return plant;
  }

  Stay lastStay() {
    return stays.get(stays.size() - 1);
  }

  Optional<Stay> lastStayAt(Garden.Spot spot) {
    return stays.stream()
        .filter(s -> s.planting().raft().equals(spot.raft()) && s.site().equals(spot.site()))
        .reduce((earlier, later) -> later);
  }

  boolean hasMoved() {
    return stays.size() > 1;
  }

  void arrive(Planting planting, SiteId site, Instant at) {
    stays.add(new Stay(planting, site, at, Optional.empty(), Ending.NONE));
  }

  /** Ends the stay; one that has ended already keeps its time and takes the new reason. */
  void leave(Instant at, Ending ending) {
    Stay stay = stays.remove(stays.size() - 1);
    stays.add(
        new Stay(
            stay.planting(),
            stay.site(),
            stay.from(),
            stay.to().or(() -> Optional.of(at)),
            ending));
  }

  void cut(Instant at) {
    cutAt.add(at);
  }

  void transplantIfNever(LocalDate day) {
    transplantedOn = transplantedOn.or(() -> Optional.of(day));
  }

  PlantLife toLife() {
    return new PlantLife(plant, sownOn, transplantedOn, cutAt, stays);
  }
}
