// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Locale;

/** What the expected area of a plant rests on. */
public enum Basis {
  /** The shape of past cycles of the same crop and variety, shifted by tonight's cohort. */
  CYCLES,
  /** Tonight's cohort, the raft itself left out where there are others. */
  COHORT,
  /** The crop's curve in the book. */
  CROP;

  /** Returns the word as written in reports. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
