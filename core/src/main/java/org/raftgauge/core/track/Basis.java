// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Locale;

/** What the expected area of a plant rests on. */
public enum Basis {
  /** The shape of past cycles of the same crop and variety, shifted by tonight's cohort. */
  CYCLES,
  /** The same on degree-days, where those foretell past cycles better than days do. */
  DEGREE_DAYS,
  /** The cohort's other rafts as last seen. */
  COHORT,
  /** The crop's curve in the book. */
  CROP,
  /** Nothing but the raft's own other plants: whether those are as they should be is not known. */
  RAFT;

  /** Says whether past cycles tell it. */
  boolean onCycles() {
    return this == CYCLES || this == DEGREE_DAYS;
  }

  /** Returns what a plant is compared with, to be read after "by". */
  public String words() {
    return switch (this) {
      case CYCLES -> "past cycles of its crop";
      case DEGREE_DAYS -> "past cycles of its crop, on degree-days";
      case COHORT -> "the other rafts of its cohort";
      case CROP -> "the crop's curve in the book";
      case RAFT -> "the raft's own other plants";
    };
  }

  /** Returns the word as written in reports. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
