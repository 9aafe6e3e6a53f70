// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A row of a harvest plan.
 *
 * @param raft the raft
 * @param harvestOn the day on which it is harvested; nothing to leave it
 */
public record PlanRow(String raft, Optional<LocalDate> harvestOn) {}
