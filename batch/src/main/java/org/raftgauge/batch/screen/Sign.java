// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.screen;

import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;

/** The shape of each kind of signal: told apart without colour and without reading. */
final class Sign {

  private Sign() {}

  /** Returns the shape, y down. */
  static Shape of(Signal.Kind kind) {
    return switch (kind) {
      case GOOD -> tick();
      case ACT -> warning();
      case WAIT -> dots();
    };
  }

  private static Shape tick() {
    Path2D path = new Path2D.Double();
    path.moveTo(0, 50);
    path.lineTo(35, 85);
    path.lineTo(110, 0);
    return new BasicStroke(22, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER)
        .createStrokedShape(path);
  }

  /** A triangle with a stroke and a dot cut out. */
  private static Shape warning() {
    Path2D triangle = new Path2D.Double();
    triangle.moveTo(60, 0);
    triangle.lineTo(120, 104);
    triangle.lineTo(0, 104);
    triangle.closePath();
    Area sign = new Area(triangle);
    Path2D stroke = new Path2D.Double();
    stroke.moveTo(52, 34);
    stroke.lineTo(68, 34);
    stroke.lineTo(64, 72);
    stroke.lineTo(56, 72);
    stroke.closePath();
    sign.subtract(new Area(stroke));
    sign.subtract(new Area(new Ellipse2D.Double(52, 79, 16, 16)));
    return sign;
  }

  private static Shape dots() {
    Area dots = new Area();
    for (int i = 0; i < 3; i++) {
      dots.add(new Area(new Ellipse2D.Double(40 * i, 0, 24, 24)));
    }
    return dots;
  }
}
