// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.OptionalDouble;

/**
 * What a crop is harvested at.
 *
 * @param headWeightG weight that a head should have, g, above 0
 * @param minimumG weight under which a head is not sold, g, 0 to {@code headWeightG}
 * @param readyShare share of heads over the minimum at which a raft is ready, above 0 to 1
 * @param windowFromDat first day after transplant at which it is harvested, 0 or more
 * @param windowToDat last such day, at least {@code windowFromDat}
 * @param trimShare share of the weight that is trimmed away, 0 to below 1
 * @param packG weight of a sales pack, g, where it is packed by weight
 */
public record Harvest(
    double headWeightG,
    double minimumG,
    double readyShare,
    double windowFromDat,
    double windowToDat,
    double trimShare,
    OptionalDouble packG) {

  /** Checks the ranges. */
  public Harvest {
    boolean weights = headWeightG > 0 && minimumG >= 0 && minimumG <= headWeightG;
    boolean shares = readyShare > 0 && readyShare <= 1 && trimShare >= 0 && trimShare < 1;
    boolean window = windowFromDat >= 0 && windowToDat >= windowFromDat;
    if (!weights || !shares || !window) {
      throw new IllegalArgumentException(
          "harvest out of range: head %s g, minimum %s g, ready %s, window %s to %s, trim %s"
              .formatted(headWeightG, minimumG, readyShare, windowFromDat, windowToDat, trimShare));
    }
  }
}
