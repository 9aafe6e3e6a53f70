// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

/**
 * No curve of the cohort.
 *
 * @param reason why not, for a reader
 */
public record NoCohortCurve(String reason) implements CohortFit {}
