// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.history.Sight;

/**
 * A patch with an evening's sights of its plants. What is done here touches these plants alone, so
 * that patches can be gone through side by side.
 *
 * @param patch the patch
 * @param seen its plants that were seen, in the order of plants
 */
record PatchSights(Patch patch, List<Seen> seen) {
  /** Fewest plants of a raft that tell what they have in common. */
  private static final int FEWEST_TOGETHER = 5;

  /** By how much a raft's plants depart together, ln(area), without anything being amiss. */
  private static final double USUAL_TOGETHER = 0.05;

  /** Plants from which their own spread is known. */
  private static final int FEWEST_SPREAD = 4;

  /** Returns the level of its plants; nothing where none has an area. */
  Optional<Cohort.Level> level(StationWatch stations, TrackRules rules) {
    List<Sight> usable = seen.stream().map(Seen::sight).filter(Sight::hasArea).toList();
    if (usable.isEmpty()) {
      return Optional.empty();
    }
    String station = usable.get(0).station();
    double offset = stations.offset(station);
    double[] ln = usable.stream().mapToDouble(s -> Math.log(s.areaCm2()) - offset).toArray();
    RobustCentre centre = RobustCentre.of(ln);
    double age = usable.stream().mapToDouble(Sight::ageDays).average().orElseThrow();
    double spread = ln.length < FEWEST_SPREAD ? rules.healthySd() : centre.spread();
    double se = Math.hypot(1.1 * spread / Math.sqrt(ln.length), rules.photoSd());
    PatchLevel level =
        new PatchLevel(
            usable.get(0).evening(), age, centre.centre(), se, ln.length, station, false, offset);
    return Optional.of(new Cohort.Level(patch, level));
  }

  /** Doubts the sights of all its plants. */
  void doubt(String why) {
    seen.forEach(each -> each.plant().doubt(why));
  }

  /**
   * Lets its plants take their sights.
   *
   * @param offset known offset of the station, ln(area)
   * @param expected what is expected of them
   */
  void take(double offset, Expected expected) {
    double common = common(offset, expected);
    for (Seen each : seen) {
      if (each.sight().hasArea()) {
        each.plant()
            .impossible(each.sight(), offset, expected)
            .ifPresentOrElse(
                why -> each.plant().doubt(why),
                () -> each.plant().take(each.sight(), offset, expected, common));
      }
    }
  }

  /** Returns by how much its plants depart together over what is usual; 0 where few tell. */
  private double common(double offset, Expected expected) {
    double[] surprises =
        seen.stream()
            .map(each -> each.plant().surprise(each.sight(), offset, expected))
            .flatMapToDouble(OptionalDouble::stream)
            .toArray();
    double together = surprises.length < FEWEST_TOGETHER ? 0 : RobustCentre.median(surprises);
    return Math.sqrt(Math.max(0, together * together - USUAL_TOGETHER * USUAL_TOGETHER));
  }

  /** Returns the innovations of its plants that are held against a forecast. */
  double[] innovations() {
    return seen.stream()
        .map(Seen::plant)
        .filter(Follow::foretold)
        .mapToDouble(plant -> plant.track().innovation())
        .toArray();
  }

  /**
   * Ends the evening.
   *
   * @param common what the farm's innovations have in common
   */
  void close(double common) {
    for (Seen each : seen) {
      if (each.plant().foretold()) {
        each.plant().chart(common);
      }
      each.plant().closeEvening(each.sight());
    }
  }
}
