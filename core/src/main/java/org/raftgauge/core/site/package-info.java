// SPDX-License-Identifier: Apache-2.0
/**
 * Splits the canopy between a board's planting sites and measures each: areas in cm2 of deck,
 * lengths in mm.
 */
package org.raftgauge.core.site;
