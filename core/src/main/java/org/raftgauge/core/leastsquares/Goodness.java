// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.leastsquares;

/** How well a curve fits: sum of squares, residual deviation, log likelihood, points observed. */
record Goodness(double rss, double sigma, double logLikelihood, int observed) {}
