// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Decides between camera and plants where all that a station saw stepped at once.
 *
 * <p>A step in every pond that a station sees is its camera's: no dosing reaches several ponds at
 * once by one factor. Where a station sees one pond alone, one evening cannot tell: that evening is
 * held. The next evening tells a step, which stays as it is, from a ramp, which goes on: growth
 * that has slowed. A step is then taken off the station's areas; a ramp is left to the pond.
 */
final class StationWatch {
  /**
   * A second evening at this multiple of the first, for twice the days, goes on rather than stays.
   */
  private static final double GOES_ON = 1.5;

  private final Map<String, Double> offsets = new TreeMap<>();
  private final Map<String, StationStep> pending = new HashMap<>();
  private final Set<String> ramps = new HashSet<>();
  private final Map<String, StationStep> steps = new TreeMap<>();
  private final Map<String, Double> lastStep = new HashMap<>();
  private final Set<String> unsettled = new HashSet<>();

  /** Looks at an evening's levels, as they are after known offsets were taken off. */
  void evening(List<Cohort.Level> tonight) {
    steps.clear();
    unsettled.clear();
    Set<String> seen = new HashSet<>();
    tonight.forEach(l -> seen.add(l.level().station()));
    List<StationStep> found = new ArrayList<>(new FindStationSteps(tonight).find());
    Set<String> stepping = new HashSet<>();
    for (StationStep step : found) {
      stepping.add(step.station());
      settle(step);
    }
    for (String station : seen) {
      if (!stepping.contains(station)) {
        pending.remove(station);
        ramps.remove(station);
        lastStep.remove(station);
      }
    }
  }

  private void settle(StationStep step) {
    String station = step.station();
    if (ramps.contains(station)) {
      return;
    } else if (lastStep.getOrDefault(station, 0.0) * step.ln() > 0) {
      ramps.add(station);
    } else if (step.inAllPonds()) {
      camera(step);
    } else if (!pending.containsKey(station)) {
      pending.put(station, step);
      unsettled.add(station);
      steps.put(station, step);
    } else if (goesOn(pending.remove(station), step)) {
      ramps.add(station);
    } else {
      camera(step);
    }
  }

  private static boolean goesOn(StationStep first, StationStep second) {
    double more = second.days() / Math.max(first.days(), 0.5);
    return second.ln() / first.ln() > 1 + (GOES_ON - 1) * (more - 1);
  }

  private void camera(StationStep step) {
    offsets.merge(step.station(), step.ln(), Double::sum);
    steps.put(step.station(), step);
    lastStep.put(step.station(), step.ln());
  }

  /** Returns what is to be taken off ln(area) at a station, as known before this evening. */
  double offset(String station) {
    return offsets.getOrDefault(station, 0.0);
  }

  /** Returns this evening's steps by station. */
  Map<String, StationStep> steps() {
    return steps;
  }

  /** Says whether this evening of a station cannot be used. */
  boolean unsettled(String station) {
    return unsettled.contains(station);
  }

  /** Says whether a station sees all its plants slow down, evening after evening. */
  boolean ramp(String station) {
    return ramps.contains(station);
  }

  Map<String, Double> offsets() {
    return offsets;
  }
}
