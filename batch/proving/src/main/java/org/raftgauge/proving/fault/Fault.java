// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

/** What goes wrong with a station and stays wrong. */
enum Fault {
  /** The picture shifts by 3 px. */
  KNOCK_3(0, "camera knocked, 3 px"),
  /** The picture shifts by 10 px. */
  KNOCK_10(1, "camera knocked, 10 px"),
  /** The picture shifts by 40 px. */
  KNOCK_40(2, "camera knocked, 40 px"),
  /** The camera turns about its axis. */
  TURN(3, "camera turned, 0.5 degree"),
  /** Another lens: 4 % longer, other distortion. */
  LENS(4, "lens swapped (4 % longer, k1 -0.09 to -0.03)"),
  /** Fog on the lens. */
  FOG(5, "lens fogged (blur 1.4 px, veil 0.2)"),
  /** A drop on the lens blurs one part. */
  DROP(6, "drop on the lens (blur over a tenth of the picture)"),
  /** One lamp of several is out: a quarter less light, falling off to one side. */
  LAMP(7, "one lamp out (a quarter less light, 30 % a metre to one side)"),
  /** The water is lower. */
  WATER(8, "water 40 mm lower");

  private final int number;
  private final String label;

  Fault(int number, String label) {
    this.number = number;
    this.label = label;
  }

  /** Returns a number of its own, for seeds. */
  int number() {
    return number;
  }

  /** Returns what it is called in tables. */
  String label() {
    return label;
  }
}
