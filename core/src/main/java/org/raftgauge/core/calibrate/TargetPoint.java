// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import org.raftgauge.core.pixels.PointPx;

/**
 * A point of a target seen in a photo.
 *
 * @param number its number among the target's points
 * @param xMm its place on the target, mm
 * @param yMm its place on the target, mm
 * @param seen where it was seen
 */
public record TargetPoint(int number, double xMm, double yMm, PointPx seen) {}
