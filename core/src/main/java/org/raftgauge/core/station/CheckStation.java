// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Says what about a station has changed, when, and what to do. */
public final class CheckStation {

  private CheckStation() {}

  /**
   * Checks a station on its newest evening.
   *
   * @param evenings in the order of time
   * @return the faults that the newest evening shows; none where all is as it was or the past is
   *     too short
   */
  public static List<StationFault> check(List<StationEvening> evenings) {
    List<StationFault> faults = new ArrayList<>();
    for (StationSign sign : StationSign.values()) {
      fault(sign, evenings).ifPresent(faults::add);
    }
    return faults;
  }

  /**
   * Says of how many signs the past is long enough to judge by.
   *
   * @param evenings in the order of time
   * @return 0 to the number of signs
   */
  public static int judged(List<StationEvening> evenings) {
    int judged = 0;
    for (StationSign sign : StationSign.values()) {
      judged += with(sign, evenings).size() > sign.rule().least() ? 1 : 0;
    }
    return judged;
  }

  private static List<StationEvening> with(StationSign sign, List<StationEvening> evenings) {
    return evenings.stream().filter(e -> sign.of(e).isPresent()).toList();
  }

  private static Optional<StationFault> fault(StationSign sign, List<StationEvening> evenings) {
    List<StationEvening> known = with(sign, evenings);
    double[] values = known.stream().mapToDouble(e -> sign.of(e).getAsDouble()).toArray();
    List<ControlPoint> points = ControlChart.of(values, sign.rule());
    if (points.isEmpty()) {
      return Optional.empty();
    }
    int last = points.size() - 1;
    ControlPoint.State state = points.get(last).state();
    boolean newest = known.get(last).evening().equals(evenings.get(evenings.size() - 1).evening());
    if (!state.out() || sign.meaning(state).isEmpty() || !newest) {
      return Optional.empty();
    }
    int first = last;
    while (first > 0 && points.get(first - 1).state() == state) {
      first--;
    }
    return Optional.of(
        new StationFault(
            sign,
            known.get(first).evening(),
            last - first + 1,
            points.get(last).value(),
            points.get(first).level(),
            sign.meaning(state),
            sign.remedy(state)));
  }
}
