// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;

/**
 * The level of a patch, the plants of one cohort on one raft, on one evening.
 *
 * @param evening the farm's day
 * @param age mean age of its plants, days
 * @param lnArea robust centre of ln(area in cm2), corrected for what is known of the station
 * @param standardError of the centre
 * @param plants number of plants with an area
 * @param station where it was photographed
 * @param doubtful whether the photo as a whole is doubted: not used for anything
 * @param takenOff what was taken off ln(area) for what is known of the station
 */
record PatchLevel(
    LocalDate evening,
    double age,
    double lnArea,
    double standardError,
    int plants,
    String station,
    boolean doubtful,
    double takenOff) {

  PatchLevel shifted(double by) {
    return new PatchLevel(
        evening, age, lnArea + by, standardError, plants, station, doubtful, takenOff - by);
  }

  PatchLevel doubted() {
    return new PatchLevel(evening, age, lnArea, standardError, plants, station, true, takenOff);
  }
}
