// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.cluster.first;

import org.raftgauge.batch.run.Measured;

/**
 * A row of the measures: a photo's outcome of the first pass, every digit.
 *
 * @param measured the outcome
 * @param bytes size of the file
 * @param modifiedMs when the file was last changed, ms since 1970
 */
public record Stored(Measured measured, long bytes, long modifiedMs) {}
