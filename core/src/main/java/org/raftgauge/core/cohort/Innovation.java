// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

/**
 * One photo against what was forecast for it from the plant's earlier photos.
 *
 * @param dat day of the photo
 * @param lnArea observed ln area
 * @param expected forecast ln area, from earlier photos only
 * @param sd standard deviation of observed less expected, area error included
 */
public record Innovation(double dat, double lnArea, double expected, double sd) {
  /** Returns the innovation in standard deviations: about standard normal for a healthy plant. */
  public double z() {
    return (lnArea - expected) / sd;
  }
}
