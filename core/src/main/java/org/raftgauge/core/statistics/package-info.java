/**
 * Statistics that no library here has: control charts ({@link
 * org.raftgauge.core.statistics.EwmaRule}, {@link org.raftgauge.core.statistics.Cusum}), many tests
 * at once ({@link org.raftgauge.core.statistics.BenjaminiHochberg}), patterns over a board ({@link
 * org.raftgauge.core.statistics.MoransI}, {@link org.raftgauge.core.statistics.PlaneTrend}) and
 * agreement of two judges ({@link org.raftgauge.core.statistics.CohensKappa}). Plain numbers in and
 * out, units the caller's; sources at each type.
 */
package org.raftgauge.core.statistics;
