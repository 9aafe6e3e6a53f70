// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** Says what about a station has changed, when, and what to do. */
public final class CheckStation {
  private final List<StationEvening> evenings;
  private final List<Optional<Fouling.Worst>> fouled;
  private final NavigableMap<LocalDate, List<StationFault>> faults = new TreeMap<>();

  private CheckStation(List<StationEvening> evenings) {
    this.fouled = Fouling.of(evenings);
    this.evenings = new ArrayList<>();
    for (int i = 0; i < evenings.size(); i++) {
      StationEvening evening = evenings.get(i);
      this.evenings.add(
          fouled.get(i).map(w -> evening.with(StationSign.FOULING, w.ln())).orElse(evening));
      faults.put(evening.evening(), new ArrayList<>());
    }
  }

  /**
   * Checks a station on its newest evening.
   *
   * @param evenings in the order of time
   * @return the faults that the newest evening shows; none where all is as it was or the past is
   *     too short
   */
  public static List<StationFault> check(List<StationEvening> evenings) {
    return evenings.isEmpty() ? List.of() : byEvening(evenings).lastEntry().getValue();
  }

  /**
   * Checks a station on every evening, each against the evenings before it alone.
   *
   * @param evenings in the order of time
   * @return the faults that each shows, none where all is as it was
   */
  public static NavigableMap<LocalDate, List<StationFault>> byEvening(
      List<StationEvening> evenings) {
    CheckStation check = new CheckStation(evenings);
    for (StationSign sign : StationSign.values()) {
      check.chart(sign);
    }
    check.faults.values().forEach(f -> f.sort(Comparator.comparing(StationFault::sign)));
    return check.faults;
  }

  /**
   * Says of how many signs the past is long enough to judge by.
   *
   * @param evenings in the order of time
   * @return 0 to the number of signs
   */
  public static int judged(List<StationEvening> evenings) {
    CheckStation check = new CheckStation(evenings);
    int judged = 0;
    for (StationSign sign : StationSign.values()) {
      judged += check.with(sign).size() > sign.rule().least() ? 1 : 0;
    }
    return judged;
  }

  /** Returns the indices of the evenings that show a sign. */
  private List<Integer> with(StationSign sign) {
    List<Integer> known = new ArrayList<>();
    for (int i = 0; i < evenings.size(); i++) {
      // The photo's own sharpness changes with the crop: board edges, where seen, tell more.
      boolean better =
          sign == StationSign.SHARPNESS && evenings.get(i).value(StationSign.EDGE_BLUR).isPresent();
      if (evenings.get(i).value(sign).isPresent() && !better) {
        known.add(i);
      }
    }
    return known;
  }

  private void chart(StationSign sign) {
    List<Integer> known = with(sign);
    double[] values =
        known.stream().mapToDouble(i -> evenings.get(i).value(sign).getAsDouble()).toArray();
    List<ControlPoint> points = ControlChart.of(values, sign.rule());
    int first = 0;
    for (int i = 0; i < points.size(); i++) {
      if (i > 0 && points.get(i).state() != points.get(i - 1).state()) {
        first = i;
      }
      if (!sign.meaning(points.get(i).state()).isEmpty()) {
        LocalDate since = evenings.get(known.get(first)).evening();
        Run run = new Run(since, i - first + 1, points.get(first).level());
        if (run.evenings() >= sign.evenings() || points.get(i).isFar(sign.rule())) {
          faults
              .get(evenings.get(known.get(i)).evening())
              .add(fault(sign, points.get(i), run, known.get(i)));
        }
      }
    }
  }

  /** Evenings running that are out on one side. */
  private record Run(LocalDate since, int evenings, double usual) {}

  private StationFault fault(StationSign sign, ControlPoint point, Run run, int evening) {
    String where =
        sign == StationSign.FOULING ? ", at the " + fouled.get(evening).get().words() : "";
    return new StationFault(
        sign,
        run.since(),
        run.evenings(),
        point.value(),
        run.usual(),
        sign.meaning(point.state()) + where,
        sign.remedy(point.state()));
  }
}
