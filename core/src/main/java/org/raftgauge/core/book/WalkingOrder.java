// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Comparator;

/** The order in which a person comes by rafts: pond by pond, along the berths. */
public final class WalkingOrder {

  private WalkingOrder() {}

  /**
   * Compares berths: those that are numbers by their size, then the others by their letters, then
   * those without one.
   *
   * @return the order
   */
  public static Comparator<String> berths() {
    return Comparator.comparing(String::isEmpty)
        .thenComparingInt(WalkingOrder::number)
        .thenComparing(Comparator.naturalOrder());
  }

  private static int number(String berth) {
    return berth.matches("\\d{1,9}") ? Integer.parseInt(berth) : Integer.MAX_VALUE;
  }

  /**
   * Compares plantings by pond, berth and raft.
   *
   * @return the order
   */
  public static Comparator<Planting> plantings() {
    return Comparator.comparing(Planting::pond)
        .thenComparing(Planting::berth, berths())
        .thenComparing(Planting::raft);
  }
}
