// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.report;

/**
 * A line of the forecast, its numbers ready to be read with their units.
 *
 * @param what of what: a raft, a pond, a crop
 * @param day for which day
 * @param heads how many heads
 * @param leaf the likeliest leaf area of all heads
 * @param leafLikely its 80 % interval
 * @param weight the likeliest total weight; empty where none can be told, as what follows
 * @param likely its 80 % interval
 * @param sure its 95 % interval
 * @param ready when it is ready, or empty
 */
public record ForecastLine(
    String what,
    String day,
    String heads,
    String leaf,
    String leafLikely,
    String weight,
    String likely,
    String sure,
    String ready) {}
