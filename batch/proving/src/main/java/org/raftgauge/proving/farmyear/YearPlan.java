// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.farmyear;

/**
 * A farm year to simulate.
 *
 * @param rafts number of rafts
 * @param slowPond whether the feed of pond N2 fails
 * @param dimCamera whether camera west sees 15 % less from then on
 */
record YearPlan(int rafts, boolean slowPond, boolean dimCamera) {
  /** Evenings from transplanting to harvest. */
  static final int EVENINGS = 30;

  /** Days between batches, and their number. */
  static final int BATCH_DAYS = 5;

  static final int BATCHES = 5;

  /** Day on which ponds and cameras fail. */
  static final int FAILS = 24;

  /** Share of raft evenings without a photo. */
  static final double MISSING = 0.1;

  static final String SLOW_POND = "N2";
  static final String DIM_CAMERA = "west";
}
