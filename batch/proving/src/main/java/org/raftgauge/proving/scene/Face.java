// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.scene;

/** What the deck plane shows at a place. */
public enum Face {
  /** No board: the view goes down to the pond. */
  OPEN(0),
  /** The board's own face. */
  BOARD(1),
  /** A planting hole without a plug: the view goes down. */
  HOLE(2),
  /** What the roots stand in, in a hole. */
  PLUG(3),
  /** The rim of a net cup. */
  RIM(4),
  /** Black print of a marker or tag. */
  INK(5),
  /** White paper of a marker or tag. */
  PAPER(6),
  /** A slip of tape, a card, a label. */
  SLIP(7),
  /** The ring about what the roots stand in. */
  COLLAR(8);

  private static final Face[] ALL = values();

  private final int number;

  Face(int number) {
    this.number = number;
  }

  /** Packs a face and the number of its raft or slip into one number. */
  int code(int index) {
    return number + 16 * index;
  }

  /** Returns the face of a packed number. */
  public static Face of(int code) {
    return ALL[code & 15];
  }

  /** Returns the number of the raft or slip in a packed number. */
  public static int index(int code) {
    return code >> 4;
  }
}
