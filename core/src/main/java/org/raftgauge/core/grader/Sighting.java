// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.OffsetDateTime;
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
 */
public record Sighting(
    String raft,
    SiteId site,
    String plant,
    OffsetDateTime takenAt,
    String photo,
    OptionalDouble areaCm2,
    boolean closed,
    String held) {}
