// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.Locale;

/** The conditions of light, board, dirt and camera under which photos are made. */
public enum Condition {
  /** Overcast, clean white board. */
  PLAIN("PLN"),
  /** Hard sun with cast shadows. */
  SUN("SUN"),
  /** Patches of sun between shade. */
  PATCHES("PAT"),
  /** Red and purple leaves. */
  RED("RED"),
  /** Black or dark grey board. */
  DARK_BOARD("DRK"),
  /** Grey board. */
  GREY_BOARD("GRY"),
  /** Stained board with algae films. */
  ALGAE("ALG"),
  /** Little light, much noise. */
  DIM("DIM"),
  /** Blown-out white board, strong contrast. */
  BRIGHT("BRI"),
  /** Lamp light that the camera has not balanced. */
  TINTED("TIN"),
  /** Wet leaves and board with lamp reflections, noise. */
  GLARE("GLA"),
  /** Blue tape, cards, cables and hoses. */
  CLUTTER("CLU"),
  /** Light that falls off over the board, vignetting. */
  UNEVEN("UNE"),
  /** Haze, soft focus, strong compression. */
  HAZE("HAZ"),
  /** Camera tilted as far as allowed. */
  TILT("TLT"),
  /** Red-blue lamps: the question cannot be answered. */
  PURPLE_LAMP("PUR"),
  /** No plant on the board. */
  EMPTY("EMP"),
  /** Canopy closed over the whole board. */
  FULL("FUL");

  private final String code;

  Condition(String code) {
    this.code = code;
  }

  /** Returns three letters for raft ids. */
  String code() {
    return code;
  }

  /** Returns the name in tables and folders. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
