// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Tint;

/**
 * What lies around and under the boards.
 *
 * @param water the pond; outside is the bank
 * @param waterColour reflectance
 * @param bankColour reflectance
 * @param depthMm how far the water lies under the deck plane, mm
 * @param seed of ripples and dirt
 */
public record Pond(Box water, Tint waterColour, Tint bankColour, double depthMm, int seed) {}
