// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/** What a patch is made of. */
public enum Material {
  /** A leaf's blade. */
  BLADE,
  /** A petiole or a stem. */
  STALK,
  /** Anything that is no plant: a hose, a cable. */
  THING;

  /** Says whether the material is plant tissue. */
  public boolean isTissue() {
    return this != THING;
  }
}
