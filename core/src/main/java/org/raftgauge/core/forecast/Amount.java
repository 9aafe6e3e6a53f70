// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

/**
 * An expected amount with its 80 and 95 % intervals.
 *
 * @param mean expected
 * @param lo80 a tenth of chances lies under it
 * @param hi80 a tenth of chances lies over it
 * @param lo95 a fortieth lies under it
 * @param hi95 a fortieth lies over it
 */
public record Amount(double mean, double lo80, double hi80, double lo95, double hi95) {

  /**
   * Says whether an outcome lies in the 80 % interval.
   *
   * @param outcome in the same unit
   * @return true on its ends too
   */
  public boolean holds80(double outcome) {
    return outcome >= lo80 && outcome <= hi80;
  }

  /**
   * Says whether an outcome lies in the 95 % interval.
   *
   * @param outcome in the same unit
   * @return true on its ends too
   */
  public boolean holds95(double outcome) {
    return outcome >= lo95 && outcome <= hi95;
  }

  /**
   * Returns a share of it, such as what is left after trimming.
   *
   * @param share 0 or more
   * @return each number times the share
   */
  public Amount times(double share) {
    return new Amount(share * mean, share * lo80, share * hi80, share * lo95, share * hi95);
  }
}
