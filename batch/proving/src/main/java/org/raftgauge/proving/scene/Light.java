// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import org.raftgauge.proving.solid.Tint;

/**
 * The light over a scene.
 *
 * @param sky light from all of the sky
 * @param sun light from one direction, on a surface that faces it
 * @param sunDxMm how far a ray runs along x per mm it falls
 * @param sunDyMm how far a ray runs along y per mm it falls
 * @param softness half width of the half shadow per mm of height, mm
 * @param field how the light changes over the deck
 */
public record Light(
    Tint sky, Tint sun, double sunDxMm, double sunDyMm, double softness, Field field) {

  /**
   * How the light changes over the deck.
   *
   * @param patches strength of shade from bars and roof above, 0 none to 1
   * @param slopeX change per metre along x, as a share
   * @param slopeY change per metre along y, as a share
   * @param glare strength of lamp reflections on wet leaves and on the board
   * @param seed of patches and glare
   */
  public record Field(double patches, double slopeX, double slopeY, double glare, int seed) {}
}
