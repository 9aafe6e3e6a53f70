// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.Set;

/**
 * How departures from the expected growth are judged. Rates are per day of ln(area).
 *
 * @param believed probability from which a departure is believed on two evenings running
 * @param believedAtOnce probability from which it is believed on one
 * @param persistentSd standard deviation of ln(area) of what stays with a site's measure from
 *     evening to evening (height model, pose): it never averages out
 * @param photoSd what changes from photo to photo besides the measure's own standard error: leaves
 *     fold and droop
 * @param healthySd standard deviation of ln(area) among healthy plants of a cohort
 * @param shareDrift by how much a healthy plant's ln(share) wanders in a day, standard deviation
 * @param rateDrift by how much its rate wanders in a day, standard deviation
 * @param rateMemoryDays after which a departure of the rate has decayed to 1/e
 * @param stallEvidence natural log of the odds from which a stall is believed
 * @param off what is switched off, to see what it is good for; nothing in use
 */
public record TrackRules(
    double believed,
    double believedAtOnce,
    double persistentSd,
    double photoSd,
    double healthySd,
    double shareDrift,
    double rateDrift,
    double rateMemoryDays,
    double stallEvidence,
    Set<Part> off) {

  /** A part of the rules that can be switched off. */
  public enum Part {
    /** A departure short of certain is believed on its second evening only. */
    SECOND_EVENING,
    /** What a whole station saw is told from what plants did. */
    STATION_WATCH,
    /** A photo in which a whole raft departs from its growth is not believed. */
    RAFT_DOUBT,
    /** A pond's plants are held together against their own growth before. */
    POND_GROWTH
  }

  /** Checks the ranges. */
  public TrackRules {
    off = Set.copyOf(off);
    boolean odds = believed > 0.5 && believed <= believedAtOnce && believedAtOnce < 1;
    boolean spreads = persistentSd >= 0 && photoSd > 0 && healthySd > 0;
    boolean drifts = shareDrift > 0 && rateDrift > 0 && rateMemoryDays > 0 && stallEvidence > 0;
    if (!odds || !spreads || !drifts) {
      throw new IllegalArgumentException("rules out of range");
    }
  }

  /**
   * Returns the defaults. The two probabilities and the 2 % that persists are the design's; the
   * spread of healthy plants is the 15 to 20 % that growers count on (common practice, no source);
   * the drifts and the evidence for a stall were chosen on simulated seasons, see the proving
   * ground's season command.
   */
  public static TrackRules defaults() {
    return new TrackRules(0.9, 0.99, 0.02, 0.015, 0.25, 0.01, 0.022, 4, 3.5, Set.of());
  }

  /** Returns the same rules without a part. */
  public TrackRules without(Part part) {
    return new TrackRules(
        believed,
        part == Part.SECOND_EVENING ? believed : believedAtOnce,
        persistentSd,
        photoSd,
        healthySd,
        shareDrift,
        rateDrift,
        rateMemoryDays,
        stallEvidence,
        Set.of(part));
  }

  /** Says whether a part is in use. */
  boolean has(Part part) {
    return !off.contains(part);
  }

  /** Returns the same rules for wholes, whose healthy level spreads less than that of plants. */
  TrackRules ofGroups(double groupSd) {
    return new TrackRules(
        believed,
        believedAtOnce,
        0,
        photoSd,
        groupSd,
        shareDrift,
        rateDrift,
        rateMemoryDays,
        stallEvidence,
        off);
  }
}
