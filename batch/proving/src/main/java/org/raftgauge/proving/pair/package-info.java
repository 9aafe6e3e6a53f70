// SPDX-License-Identifier: Apache-2.0
/**
 * Photographs rafts with two cameras side by side and holds the heights that the program sees
 * against the exact ones, and the areas against those with a height model.
 */
package org.raftgauge.proving.pair;
