// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.OptionalDouble;

/** What is watched of a station, with what a change means and what to do. */
public enum StationSign {
  /** Edges in the photo as a whole. */
  SHARPNESS(0.015),
  /** Burnt-out or black pixels. */
  EXPOSURE(0.005),
  /** Colour of the board. */
  LIGHT_CAST(0.01),
  /** Camera height over the deck. */
  HEIGHT(4),
  /** Misfit of marks or edges. */
  POSE_ERROR(0.15);

  private final double leastSpread;

  /** The least spread is what the sign scatters by at the very least, a working value. */
  StationSign(double leastSpread) {
    this.leastSpread = leastSpread;
  }

  /**
   * Returns an evening's value.
   *
   * @param evening the evening
   * @return the value, where there is one
   */
  public OptionalDouble of(StationEvening evening) {
    return switch (this) {
      case SHARPNESS -> evening.sharpness();
      case EXPOSURE -> evening.exposureClippedFraction();
      case LIGHT_CAST -> evening.lightCast();
      case HEIGHT -> evening.cameraHeightMm();
      case POSE_ERROR -> evening.poseErrorMm();
    };
  }

  /** Returns the rule it is charted by. */
  public ControlRule rule() {
    return ControlRule.usual(leastSpread);
  }

  /**
   * Returns what a change means.
   *
   * @param state high or low
   * @return the words; empty where it is no fault
   */
  public String meaning(ControlPoint.State state) {
    if (!state.out()) {
      return "";
    }
    boolean high = state == ControlPoint.State.HIGH;
    return switch (this) {
      case SHARPNESS -> high ? "" : "the photos are less sharp";
      case EXPOSURE -> high ? "more of the picture is burnt out or black" : "";
      case LIGHT_CAST ->
          high ? "the light has taken on a colour" : "the light has lost a colour it had";
      case HEIGHT ->
          high
              ? "the boards look smaller: the water is lower or the camera higher"
              : "the boards look larger: the water is higher or the camera lower";
      case POSE_ERROR -> high ? "marks or edges fit worse than they did" : "";
    };
  }

  /**
   * Returns what to do about a change.
   *
   * @param state high or low
   * @return the words; empty where it is no fault
   */
  public String remedy(ControlPoint.State state) {
    if (meaning(state).isEmpty()) {
      return "";
    }
    return switch (this) {
      case SHARPNESS -> "wipe the lens, look for fog and drops, check focus and the mount";
      case EXPOSURE -> "set the exposure by the board again";
      case LIGHT_CAST -> "check that every lamp burns and is white, and the white balance";
      case HEIGHT -> "check water level, mount, zoom and focus";
      case POSE_ERROR -> "check for bent boards, loose marks, a changed lens or zoom";
    };
  }
}
