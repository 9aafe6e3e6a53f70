// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

/**
 * Where a leaf starts and how it is held.
 *
 * @param xMm base, mm
 * @param yMm base, mm
 * @param zMm base, mm over the deck
 * @param azimuthRad direction seen from above, radians
 * @param elevationRad rise of the rib at its base, radians
 * @param bendRad how far the rib turns down from base to tip, radians
 * @param twistRad roll about the rib, radians
 * @param floorMm the lowest the leaf can lie, mm over the deck
 */
record LeafPose(
    double xMm,
    double yMm,
    double zMm,
    double azimuthRad,
    double elevationRad,
    double bendRad,
    double twistRad,
    double floorMm) {}
