// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * A plant with where it stood.
 *
 * @param plant its id: the raft, site and day where it began, such as {@code DR-0401/A1/2026-04-06}
 * @param sownOn day of sowing, where known
 * @param transplantedOn day of transplanting, where it has come
 * @param cutAt when it was cut, in order
 * @param stays where it stood, in order, each ending as the next begins
 */
public record PlantLife(
    String plant,
    Optional<LocalDate> sownOn,
    Optional<LocalDate> transplantedOn,
    List<Instant> cutAt,
    List<Stay> stays) {

  /** Copies the lists. */
  public PlantLife {
    cutAt = List.copyOf(cutAt);
    stays = List.copyOf(stays);
  }

  /**
   * A stretch of a plant's life at one site.
   *
   * @param planting the planting that it belongs to while it stands there; tells the raft
   * @param site the site
   * @param from when it came
   * @param to when it left, where it has
   * @param ending how it left; {@link Ending#NONE} while it stands
   */
  public record Stay(
      Planting planting, SiteId site, Instant from, Optional<Instant> to, Ending ending) {

    /**
     * Says whether the plant stands there at an instant.
     *
     * @param instant any
     * @return true from {@code from} until just before {@code to}
     */
    public boolean holdsAt(Instant instant) {
      return !instant.isBefore(from) && (to.isEmpty() || instant.isBefore(to.get()));
    }
  }

  /** How a stay came to its end. */
  public enum Ending {
    /** It has not. */
    NONE,
    /** The planting ended by its row. */
    ENDED,
    /** Moved to another site. */
    MOVED,
    /** Replaced by a new plant. */
    REPLACED,
    /** Taken out to thin the board. */
    THINNED,
    /** Taken out to be weighed. */
    WEIGHED,
    /** Harvested. */
    HARVESTED,
    /** Died. */
    DIED
  }
}
