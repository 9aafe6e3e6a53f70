// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.report;

import java.util.Optional;
import org.raftgauge.core.site.SiteMeasure;

/**
 * One row of {@code sites.csv}.
 *
 * @param site what the photo says of the site
 * @param plant what stands there; absent on a raft that no planting explains
 */
public record SiteRow(SiteMeasure site, Optional<SitePlant> plant) {

  /** Says whether the site is planted, measured and bare. */
  boolean empty() {
    return site.held().isEmpty()
        && site.projectedAreaCm2().isPresent()
        && site.projectedAreaCm2().getAsDouble() == 0;
  }
}
