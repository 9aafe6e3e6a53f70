// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

/** What goes wrong with a station and stays wrong. */
enum Fault {
  /** The picture shifts by 3 px. */
  KNOCK_3("camera knocked, 3 px"),
  /** The picture shifts by 10 px. */
  KNOCK_10("camera knocked, 10 px"),
  /** The picture shifts by 40 px. */
  KNOCK_40("camera knocked, 40 px"),
  /** The camera turns about its axis. */
  TURN("camera turned, 0.5 degree"),
  /** Another lens: 4 % longer, other distortion. */
  LENS("lens swapped (4 % longer, k1 -0.09 to -0.03)"),
  /** Fog on the lens. */
  FOG("lens fogged (blur 1.4 px, veil 0.2)"),
  /** A drop on the lens blurs one part. */
  DROP("drop on the lens (blur over a tenth of the picture)"),
  /** One lamp of several is out: a quarter less light, falling off to one side. */
  LAMP("one lamp out (a quarter less light, 30 % a metre to one side)"),
  /** The water is lower. */
  WATER("water 40 mm lower");

  private final String label;

  Fault(String label) {
    this.label = label;
  }

  /** Returns what it is called in tables. */
  String label() {
    return label;
  }
}
