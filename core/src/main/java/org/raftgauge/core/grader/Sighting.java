// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;

/**
 * What one photo says of one plant.
 *
 * @param raft the raft it stood on
 * @param site its site
 * @param plant its id
 * @param takenAt when
 * @param photo the photo
 * @param areaCm2 projected area, cm2; absent where held
 * @param closed whether its outline cannot be told from its neighbours'
 * @param held why it is held, or empty
 * @param seen its height, where a second camera saw it
 */
public record Sighting(
    String raft,
    SiteId site,
    String plant,
    OffsetDateTime takenAt,
    String photo,
    OptionalDouble areaCm2,
    boolean closed,
    String held,
    Optional<SeenHeight> seen) {

  /**
   * The height of a plant as a second camera saw it.
   *
   * @param meanMm mean height of its top surface, mm over the deck
   * @param p95Mm height that 5 % of it reach over, mm: stands for the top, which one mismatched
   *     pixel could set
   */
  public record SeenHeight(double meanMm, double p95Mm) {}

  /**
   * Makes a sighting of a plant whose height nobody saw.
   *
   * @param raft the raft it stood on
   * @param site its site
   * @param plant its id
   * @param takenAt when
   * @param photo the photo
   * @param areaCm2 projected area, cm2; absent where held
   * @param closed whether its outline cannot be told
   * @param held why it is held, or empty
   */
  public Sighting(
      String raft,
      SiteId site,
      String plant,
      OffsetDateTime takenAt,
      String photo,
      OptionalDouble areaCm2,
      boolean closed,
      String held) {
    this(raft, site, plant, takenAt, photo, areaCm2, closed, held, Optional.empty());
  }
}
