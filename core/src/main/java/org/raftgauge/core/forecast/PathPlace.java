// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.util.OptionalDouble;

/** A place on a cycle's way; holds an array, so it is no record. */
final class PathPlace {
  /** The cycle's number. */
  final int cycle;

  /** Days. */
  final double age;

  /** Of ln area with the curve's parameters. */
  final double[] slope;

  /** Where the size is told by weight: ln area over the middle of all that were weighed. */
  final OptionalDouble weighedSize;

  PathPlace(int cycle, double age, double[] slope, OptionalDouble weighedSize) {
    this.cycle = cycle;
    this.age = age;
    this.slope = slope;
    this.weighedSize = weighedSize;
  }
}
