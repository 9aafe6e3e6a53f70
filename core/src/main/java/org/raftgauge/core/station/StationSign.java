// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.OptionalDouble;
import java.util.function.Function;

/** What is watched of a station, with what a change means and what to do. */
public enum StationSign {
  /** Edges in the photo as a whole. */
  SHARPNESS(
      StationEvening::sharpness,
      0.015,
      new Words("", ""),
      new Words(
          "the photos are less sharp",
          "wipe the lens, look for fog and drops, check focus and the mount")),
  /** Burnt-out or black pixels. */
  EXPOSURE(
      StationEvening::exposureClippedFraction,
      0.005,
      new Words("more of the picture is burnt out or black", "set the exposure by the board again"),
      new Words("", "")),
  /** Colour of the board. */
  LIGHT_CAST(
      StationEvening::lightCast,
      0.01,
      new Words("the light has taken on a colour", "check that every lamp burns and is white"),
      new Words("the light has lost a colour it had", "check lamps and white balance")),
  /** Camera height over the deck. */
  HEIGHT(
      StationEvening::cameraHeightMm,
      4,
      new Words(
          "the boards look smaller: the water is lower or the camera higher",
          "check water level, mount, zoom and focus"),
      new Words(
          "the boards look larger: the water is higher or the camera lower",
          "check water level, mount, zoom and focus")),
  /** Misfit of marks or edges. */
  POSE_ERROR(
      StationEvening::poseErrorMm,
      0.15,
      new Words(
          "marks or edges fit worse than they did",
          "check for bent boards, loose marks, a changed lens or zoom"),
      new Words("", ""));

  private final Function<StationEvening, OptionalDouble> value;
  private final ControlRule rule;
  private final Words high;
  private final Words low;

  /** What a change means and what to do; empty where a change that way is no fault. */
  private record Words(String meaning, String remedy) {}

  StationSign(
      Function<StationEvening, OptionalDouble> value, double leastSpread, Words high, Words low) {
    this.value = value;
    this.rule = ControlRule.usual(leastSpread);
    this.high = high;
    this.low = low;
  }

  /**
   * Returns an evening's value.
   *
   * @param evening the evening
   * @return the value, where there is one
   */
  public OptionalDouble of(StationEvening evening) {
    return value.apply(evening);
  }

  /** Returns the rule it is charted by; its least spread is a working value. */
  public ControlRule rule() {
    return rule;
  }

  /**
   * Returns what a change means.
   *
   * @param state high or low
   * @return the words; empty where it is no fault
   */
  public String meaning(ControlPoint.State state) {
    return words(state).meaning();
  }

  /**
   * Returns what to do about a change.
   *
   * @param state high or low
   * @return the words; empty where it is no fault
   */
  public String remedy(ControlPoint.State state) {
    return words(state).remedy();
  }

  private Words words(ControlPoint.State state) {
    return switch (state) {
      case HIGH -> high;
      case LOW -> low;
      case LEARNING, IN_CONTROL -> new Words("", "");
    };
  }
}
