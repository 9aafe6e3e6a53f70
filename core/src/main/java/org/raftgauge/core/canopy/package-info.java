// SPDX-License-Identifier: Apache-2.0
/**
 * Evens the light on a deck picture and decides how much of each pixel is leaf. In: a deck picture
 * and its layout. Out: coverage 0..1 a pixel. Colours are linear sRGB divided by the light on the
 * board, so that the board's white is 1 in each channel.
 */
package org.raftgauge.core.canopy;
