// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

/**
 * A step by the same factor of everything that a station saw in one evening.
 *
 * @param station the station
 * @param ln the step of ln(area)
 * @param days since the photos before
 * @param rafts rafts that were seen
 * @param inAllPonds whether the station sees several ponds and all of them show it
 */
record StationStep(String station, double ln, double days, int rafts, boolean inAllPonds) {

  /** Returns the step in words. */
  String words() {
    return "all "
        + rafts
        + " rafts at "
        + named(station)
        + " stepped by "
        + percent()
        + " off their own growth in one evening, whatever their size";
  }

  /** Says whose the step is taken for. */
  String whose() {
    return ln < 0 && !inAllPonds
        ? ": taken for the camera's and taken off until mended, for plants hardly do so; yet see"
            + " that they have not wilted"
        : ": the camera, not the plants; taken off until mended";
  }

  /** Names a station, which may have no name. */
  static String named(String station) {
    return station.isEmpty() ? "the station" : "station " + station;
  }

  private String percent() {
    long percent = Math.round(100 * Math.expm1(ln));
    return (percent > 0 ? "+" : "") + percent + " %";
  }
}
