/**
 * Growth curves of one plant or raft: {@link org.raftgauge.core.growth.FitGrowth} takes a {@link
 * org.raftgauge.core.growth.Series} of areas (cm2) over days after transplant and gives {@link
 * org.raftgauge.core.growth.Fitted} (parameters, relative growth rate, day of a target size, each
 * with a 95 % interval) or {@link org.raftgauge.core.growth.NotFitted} with the reason.
 *
 * <pre>{@code
 * Series series = Series.of(dat, areaCm2).withErrors(errorFraction).withClosed(closed);
 * if (FitGrowth.of(series, FitRule.defaults()) instanceof Fitted fitted) {
 *   Optional<Estimate> rgr = fitted.rgrPerDay(tonight);
 *   TargetDay ready = fitted.dayOf(400);
 * }
 * }</pre>
 *
 * <p>Plain numbers only: no rafts, no files. Sources at each type.
 */
package org.raftgauge.core.growth;
