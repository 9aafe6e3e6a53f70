// SPDX-License-Identifier: Apache-2.0
/**
 * The pictures of a run. In: a measured photo. Out: an overlay (the photo with outlines, site names
 * and areas, the board's frame and a caption) and, on request, the canopy in photo pixels. Drawn
 * with Java's own 2-D graphics, without a screen. Colours are those of Okabe and Ito (Color
 * Universal Design, 2008), told apart with any kind of colour vision.
 */
package org.raftgauge.batch.page;
