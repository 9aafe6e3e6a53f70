// SPDX-License-Identifier: Apache-2.0
/**
 * Fresh weight from measured traits. In: hand weighings joined with the measures of the same plants
 * ({@link org.raftgauge.core.grader.JoinWeighings}). Out: a {@link
 * org.raftgauge.core.grader.Grader}: {@code ln w = a + b ln A (+ c ln h)} with variety terms where
 * cross-validation earns them, one fit for open sites and one for closed ones, with the covariance
 * of its numbers, so that totals over many sites carry the error that all of them share ({@link
 * org.raftgauge.core.grader.WeightTotal}). Weights g, areas cm2, heights mm. Weights are estimates
 * from pictures, not legal-for-trade weighing. Sources: Baskerville 1972 (Can. J. For. Res.
 * 2:49-53) for fits in logarithms, Duan 1983 (JASA 78:605-610) for the way back.
 */
package org.raftgauge.core.grader;
