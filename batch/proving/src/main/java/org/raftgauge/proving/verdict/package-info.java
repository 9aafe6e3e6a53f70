// SPDX-License-Identifier: Apache-2.0
/**
 * Scores verdicts of simulated farms by the true size of each site, whatever the cause: shared by
 * all generators ({@link org.raftgauge.proving.verdict.TrueSite} in, {@link
 * org.raftgauge.proving.verdict.VerdictScore} out). Areas in cm2, days after transplant.
 */
package org.raftgauge.proving.verdict;
