// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

/** How a plant holds and shapes its leaves. */
public enum Habit {
  /** A rosette of round, overlapping leaves around a heart. */
  BUTTERHEAD("BUT"),
  /** A loose rosette of lobed, frilled leaves. */
  OAKLEAF("OAK"),
  /** Pairs of ovate leaves, crosswise on an upright stem. */
  BASIL("BAS"),
  /** Long upright leaves with a broad pale rib. */
  ROMAINE("ROM"),
  /** Narrow, deeply cut leaves on long stalks. */
  ROCKET("ROC"),
  /** Two cotyledons and perhaps the first true leaves. */
  SEEDLING("SEE");

  private final String code;

  Habit(String code) {
    this.code = code;
  }

  /** Returns three letters for raft ids. */
  public String code() {
    return code;
  }
}
