// SPDX-License-Identifier: Apache-2.0
/**
 * Plots as SVG: a {@link org.raftgauge.batch.plot.Chart} of plain values in, text out. Painted by
 * XChart on Batik's SVG canvas, without a screen; letters are drawn as shapes, so that a plot looks
 * the same everywhere. Colours are those of Okabe and Ito (Color Universal Design, 2008).
 */
package org.raftgauge.batch.plot;
