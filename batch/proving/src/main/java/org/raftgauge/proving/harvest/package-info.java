// SPDX-License-Identifier: Apache-2.0
/**
 * Scores harvest forecasts: simulated seasons with exact truth, each with its own weighings ({@link
 * org.raftgauge.proving.harvest.HarvestPage}), and published weekly weights. Areas cm2, weights g,
 * days after transplant. The seasons are invented; their parameters stand in {@link
 * org.raftgauge.proving.harvest.SeasonSetting} and on the page.
 */
package org.raftgauge.proving.harvest;
