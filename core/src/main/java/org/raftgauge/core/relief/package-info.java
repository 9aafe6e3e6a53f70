// SPDX-License-Identifier: Apache-2.0
/**
 * Canopy height over the deck, from a second camera: a rectified pair of photos, matched row by
 * row, or a depth picture. In: both pictures, where the second camera stands, the first's pose over
 * a board. Out: height in mm for each pixel of the board's deck picture, with holes where nothing
 * was seen. Depth from disparity: Hartley and Zisserman 2004, section 9; units mm and px.
 */
package org.raftgauge.core.relief;
