// SPDX-License-Identifier: Apache-2.0
/**
 * The work of {@code raftgauge forecast} and {@code raftgauge look-back}: takes measures from a
 * book's history, forecasts in core, and writes tables. Weights are estimates from pictures, not
 * legal-for-trade weighing.
 */
package org.raftgauge.batch.forecast;
