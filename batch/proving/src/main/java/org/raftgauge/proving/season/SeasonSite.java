// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.season;

import org.raftgauge.core.book.SiteId;

/**
 * A site on one evening: the truth, and what was measured.
 *
 * @param day of the season, from 0
 * @param raft the raft
 * @param site the site
 * @param dat days after transplant
 * @param fate of its plant
 * @param trueCm2 true area
 * @param healthyMedianCm2 median of the healthy plants of its cohort, without faults of ponds
 * @param photographed whether the raft was photographed
 * @param station where
 * @param measuredCm2 measured area, 0 where nothing is seen
 * @param seCm2 standard error said with it
 * @param closed whether it was flagged closed
 * @param badPhoto whether the photo was off by a common factor
 */
record SeasonSite(
    int day,
    String raft,
    SiteId site,
    double dat,
    Fate fate,
    double trueCm2,
    double healthyMedianCm2,
    boolean photographed,
    String station,
    double measuredCm2,
    double seCm2,
    boolean closed,
    boolean badPhoto) {

  double trueShare() {
    return trueCm2 / healthyMedianCm2;
  }
}
