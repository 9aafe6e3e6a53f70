// SPDX-License-Identifier: Apache-2.0
/**
 * A second generator of growing seasons, which shares no code with {@code season}: other growth
 * (logistic in area), spread, noise, season length and plights, one photo in ten missing, and
 * plants that are moved, replaced and cut. The rules of the verdicts were frozen before it was
 * first run. Everything is invented.
 */
package org.raftgauge.proving.farmyear;
