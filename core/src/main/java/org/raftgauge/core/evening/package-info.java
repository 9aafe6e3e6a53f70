// SPDX-License-Identifier: Apache-2.0
/**
 * Closes an evening ({@link org.raftgauge.core.evening.CloseEvening}): the crop book and everything
 * measured so far in; verdicts, growth curves and tomorrow's work out. A pure function that sees
 * nothing later than the evening, neither in the measures nor in the book. Areas in cm2, ages in
 * days, growth rates per day of ln(area).
 *
 * <p>A verdict says that growth departs from what is expected, not why.
 */
package org.raftgauge.core.evening;
