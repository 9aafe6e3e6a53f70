// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.station.CheckStation;
import org.raftgauge.core.station.StationEvening;
import org.raftgauge.core.station.StationFault;
import org.raftgauge.core.station.StationSign;

/** Says in words whether a station is as it was. */
public final class StationCheckText {
  /** A camera height further from the station file's is said; 1 % is 2 % in an area. */
  private static final double HEIGHT_SHARE = 0.01;

  /**
   * The same for a lens that was never calibrated: its focal length by tape is good to some 1 %,
   * and what its distortion takes at the rim adds as much again (common practice, no source).
   */
  private static final double UNCALIBRATED_SHARE = 0.03;

  private StationCheckText() {}

  /**
   * Returns what is to be said of a station.
   *
   * @param station the station
   * @param evenings its evenings, in the order of time
   * @return lines; the first names the station
   */
  public static List<String> lines(Station station, List<StationEvening> evenings) {
    List<String> lines = new ArrayList<>();
    if (evenings.isEmpty()) {
      return List.of("Station " + station.name() + ": no photos yet");
    }
    StationEvening last = evenings.get(evenings.size() - 1);
    lines.add(
        "Station "
            + station.name()
            + ": "
            + evenings.size()
            + (evenings.size() == 1 ? " evening" : " evenings")
            + ", last "
            + last.evening());
    for (StationFault fault : CheckStation.check(evenings)) {
      String held = fault.holds() ? "; its photos are held" : "";
      lines.add("  " + fault.finding() + "; " + fault.remedy() + held);
    }
    height(station, Optional.ofNullable(last.values().get(StationSign.HEIGHT)))
        .ifPresent(lines::add);
    if (lines.size() == 1) {
      Optional.ofNullable(last.values().get(StationSign.HEIGHT))
          .map(
              found ->
                  String.format(
                      Locale.ROOT,
                      "  its boards look as from %.0f mm above; camera_height_mm is %s%s",
                      found,
                      number(station.cameraHeightMm()),
                      apart(station, found)))
          .ifPresent(lines::add);
      int judged = CheckStation.judged(evenings);
      lines.add(
          judged == 0
              ? "  too short a past to say whether anything changed: it takes nine evenings"
              : "  as it was, by " + judged + " signs");
    }
    return lines;
  }

  /**
   * Says that the camera stands elsewhere than the station file says.
   *
   * @param station the station
   * @param foundMm its height by marks or edges, mm, where known
   * @return the line; nothing where they agree
   */
  public static Optional<String> height(Station station, Optional<Double> foundMm) {
    double file = station.cameraHeightMm();
    double share = station.lens().isCalibrated() ? HEIGHT_SHARE : UNCALIBRATED_SHARE;
    return foundMm
        .filter(found -> Math.abs(found / file - 1) > share)
        .map(
            found ->
                String.format(
                    Locale.ROOT,
                    "  its boards look as from %.0f mm above, %.1f %% %s than camera_height_mm: %s of"
                        + " stations/%s.yaml; measure the height again, and where it is right the"
                        + " board and the marker sizes in layouts.yaml, then the lens",
                    found,
                    100 * Math.abs(found / file - 1),
                    found > file ? "more" : "less",
                    number(file),
                    station.name()));
  }

  /** Says why a height that a calibrated lens would not pass is let pass. */
  private static String apart(Station station, double foundMm) {
    double apart = Math.abs(foundMm / station.cameraHeightMm() - 1);
    return apart > HEIGHT_SHARE
        ? String.format(
            Locale.ROOT,
            ": %.1f %% apart, as a lens that was never calibrated may be (raftgauge station lens);"
                + " measure the height again, if you can, and the marks in layouts.yaml",
            100 * apart)
        : "";
  }

  private static String number(double mm) {
    return BigDecimal.valueOf(mm).stripTrailingZeros().toPlainString();
  }
}
