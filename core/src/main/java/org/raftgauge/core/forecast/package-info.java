// SPDX-License-Identifier: Apache-2.0
/**
 * What rafts will weigh and when they are ready. In: the crop book, looks at sites and graders
 * ({@link org.raftgauge.core.forecast.ForecastEvening}), nothing later than an evening. Out: ln
 * area of every plant on each coming day from its cohort-shrunk curve, weights by the grader's
 * regime, totals of rafts, ponds and crops with intervals, ready days, supply, and totals of a
 * harvest plan; and how earlier forecasts came out ({@link org.raftgauge.core.forecast.LookBack}).
 * Areas cm2, weights g, days from the evening.
 *
 * <p>Errors that plants share (the grader's calibration, growth of the cohort, weather) are drawn
 * once for all of them by a seeded generator, so that they do not average out in totals; what is a
 * plant's own does. Weights are estimates from pictures, not legal-for-trade weighing.
 */
package org.raftgauge.core.forecast;
