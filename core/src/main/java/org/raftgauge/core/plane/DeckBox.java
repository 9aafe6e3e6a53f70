// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import org.raftgauge.core.book.PointMm;

/** An upright rectangle of the deck from its upper left corner, mm. */
record DeckBox(PointMm corner, double widthMm, double heightMm) {

  /** Returns the area in common with another over the smaller of both, 0..1. */
  double overlap(DeckBox other) {
    double w = common(corner.xMm(), corner.xMm() + widthMm, other.corner.xMm(), other.widthMm);
    double h = common(corner.yMm(), corner.yMm() + heightMm, other.corner.yMm(), other.heightMm);
    return w * h / Math.min(widthMm * heightMm, other.widthMm * other.heightMm);
  }

  private static double common(double from, double to, double otherFrom, double otherLength) {
    return Math.max(0, Math.min(to, otherFrom + otherLength) - Math.max(from, otherFrom));
  }
}
