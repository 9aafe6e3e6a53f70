// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.OptionalDouble;

/** A trait that weight is told from. */
public enum Size {
  /** Projected leaf area, cm2. */
  AREA("area_cm2"),
  /** Height of the top over the deck, mm. */
  HEIGHT("top_height_mm"),
  /** Area by the plant's own growth curve from before closure, cm2. */
  CURVE("curve_area_cm2");

  private final String column;

  Size(String column) {
    this.column = column;
  }

  /** Returns its name in files, with the unit. */
  public String column() {
    return column;
  }

  /**
   * Takes it from a plant's traits.
   *
   * @param traits of a plant
   * @return in its unit, above 0, where known
   */
  public OptionalDouble of(Traits traits) {
    return switch (this) {
      case AREA -> traits.areaCm2();
      case HEIGHT -> traits.topHeightMm();
      case CURVE -> traits.curveAreaCm2();
    };
  }
}
