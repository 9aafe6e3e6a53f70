// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.store;

import java.util.Optional;
import org.raftgauge.core.measure.PhotoMeasure;

/**
 * A photo's measure with what tells whether it still holds.
 *
 * @param measure what the measurement said (never known or replaced)
 * @param settings hash of what besides the photo's bytes it depends on
 * @param run the run that measured it
 * @param picturedRun the last published run whose folder holds its pictures, where there is one
 */
public record Kept(
    PhotoMeasure measure, String settings, String run, Optional<String> picturedRun) {}
