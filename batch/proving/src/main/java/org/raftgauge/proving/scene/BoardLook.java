// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import org.raftgauge.proving.solid.Tint;

/**
 * How a board looks.
 *
 * @param colour reflectance of the clean board
 * @param stain strength of the brownish stains, 0..1
 * @param algae strength of the algae film, 0..1
 * @param gloss how much the board mirrors the lamps, 0..1
 * @param medium what fills the holes
 * @param netCups true: a dark rim around each plug
 * @param seed of its stains
 */
public record BoardLook(
    Tint colour,
    double stain,
    double algae,
    double gloss,
    Medium medium,
    boolean netCups,
    int seed) {}
