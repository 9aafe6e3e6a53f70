// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.cohort;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.growth.Series;

/** Takes so many of a large cohort's plants as its curve needs: more take time, no more. */
public final class SomePlants {

  private SomePlants() {}

  /**
   * Takes plants at even distances in their order.
   *
   * @param all of the cohort, in any fixed order
   * @param most how many at most, at least 1
   * @return all of them where they are no more
   */
  public static List<Series> evenly(List<Series> all, int most) {
    if (all.size() <= most) {
      return all;
    }
    List<Series> some = new ArrayList<>(most);
    for (int i = 0; i < most; i++) {
      some.add(all.get((int) ((long) i * all.size() / most)));
    }
    return some;
  }
}
