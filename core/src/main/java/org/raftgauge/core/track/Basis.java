// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Locale;

/** What the expected area of a plant rests on. */
public enum Basis {
  /** The shape of past cycles of the same crop and variety, shifted by tonight's cohort. */
  CYCLES,
  /** The same on degree-days, where those foretell past cycles better than days do. */
  DEGREE_DAYS,
  /** Tonight's cohort, the raft itself left out where there are others. */
  COHORT,
  /** The crop's curve in the book. */
  CROP;

  /** Says whether past cycles tell it. */
  boolean onCycles() {
    return this == CYCLES || this == DEGREE_DAYS;
  }

  /** Returns what a plant is compared with, to be read after "by". */
  public String words() {
    return switch (this) {
      case CYCLES -> "past cycles of its crop";
      case DEGREE_DAYS -> "past cycles of its crop, on degree-days";
      case COHORT -> "the other plants of its cohort";
      case CROP -> "the crop's curve in the book";
    };
  }

  /** Returns the word as written in reports. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
