// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Tint;

/**
 * A flat rectangle on the deck: tape, a card, a label.
 *
 * @param place its middle and turn
 * @param lengthMm mm
 * @param widthMm mm
 * @param colour its reflectance
 */
public record Slip(Placement place, double lengthMm, double widthMm, Tint colour) {

  /** Says whether the slip covers a place in the world, mm. */
  boolean covers(double x, double y) {
    double cos = Math.cos(place.turnRad());
    double sin = Math.sin(place.turnRad());
    double dx = x - place.xMm();
    double dy = y - place.yMm();
    return Math.abs(dx * cos + dy * sin) < lengthMm / 2
        && Math.abs(dy * cos - dx * sin) < widthMm / 2;
  }
}
