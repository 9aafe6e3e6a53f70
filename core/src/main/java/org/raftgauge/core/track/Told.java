// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import org.raftgauge.core.book.Crop;

/** Says whether how something stands is known at all. */
final class Told {
  private Told() {}

  /** Says whether a share is held against something from outside and tells the limits apart. */
  static boolean isTold(Judged.Share share, Crop.Limits limits) {
    return share.basis() != Basis.RAFT && isNarrow(share.lo95(), share.hi95(), limits);
  }

  /** Says whether a 95 % interval does not reach from lagging, past all that is well, to ahead. */
  static boolean isNarrow(double lo95, double hi95, Crop.Limits limits) {
    return lo95 >= limits.laggingShare() || hi95 <= limits.aheadShare();
  }
}
