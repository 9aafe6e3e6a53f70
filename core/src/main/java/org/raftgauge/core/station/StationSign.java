// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.Locale;

/**
 * What is watched of a station, with what a change means and what to do.
 *
 * <p>The least spread of each is what it scatters by at the very least: a working value, a fifth of
 * what is worth a walk to the station.
 */
public enum StationSign {
  /** Edges in the photo as a whole, 0..1; changes with the crop, so board edges go before it. */
  SHARPNESS(0.03),
  /** Burnt-out or black pixels, share. */
  EXPOSURE(0.01),
  /** Colour of the board, 0..1. */
  LIGHT_CAST(0.015),
  /** Camera height over the deck, mm. */
  HEIGHT(4),
  /** Misfit of marks or edges, mm. */
  POSE_ERROR(0.15),
  /** Blur of board edges, px. */
  EDGE_BLUR(0.06),
  /** Darkest light over white, 0..1. */
  HAZE(0.012),
  /** How much blurrier than usual the worst place of the picture is, ln. */
  FOULING(0.06),
  /** Light lost half a picture width from the middle, share. */
  VIGNETTING(0.02),
  /** Light at the right over that at the left, ln. */
  LIGHT_ACROSS(0.05),
  /** Light below over that above, ln. */
  LIGHT_DOWN(0.05),
  /** Light of a white board, share of full scale. */
  BOARD_LIGHT(0.03),
  /** Shift of a fixed camera's picture to the right, px. */
  SHIFT_RIGHT(0.4),
  /** Shift of a fixed camera's picture down, px. */
  SHIFT_DOWN(0.4),
  /** Turn of a fixed camera's picture, degrees. */
  TURN(0.02),
  /** How far the rows of a pair of cameras lie apart, px. */
  PAIR_ROWS(0.1);

  private final double leastSpread;

  StationSign(double leastSpread) {
    this.leastSpread = leastSpread;
  }

  /** Returns the rule it is charted by. */
  public ControlRule rule() {
    return ControlRule.usual(leastSpread);
  }

  /**
   * Returns the evenings running on which it must be out before it is said, unless it is far out:
   * the light of one evening also changes with weather, sun and season, a place may be smeared by
   * what moves there; a lamp that fails stays so, and so does dirt on a lens.
   */
  public int evenings() {
    return switch (this) {
      case LIGHT_CAST, LIGHT_ACROSS, LIGHT_DOWN, BOARD_LIGHT, EXPOSURE, VIGNETTING, FOULING -> 2;
      default -> 1;
    };
  }

  /** Returns its name in words. */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /**
   * Returns a value with its unit.
   *
   * @param value in the sign's unit
   * @return the text
   */
  public String shown(double value) {
    return switch (this) {
      case HEIGHT -> String.format(Locale.ROOT, "%.0f mm", value);
      case POSE_ERROR -> String.format(Locale.ROOT, "%.2f mm", value);
      case EDGE_BLUR, PAIR_ROWS -> String.format(Locale.ROOT, "%.2f px", value);
      case SHIFT_RIGHT, SHIFT_DOWN -> String.format(Locale.ROOT, "%.1f px", value);
      case TURN -> String.format(Locale.ROOT, "%.2f degrees", value);
      case SHARPNESS,
          EXPOSURE,
          LIGHT_CAST,
          HAZE,
          FOULING,
          VIGNETTING,
          LIGHT_ACROSS,
          LIGHT_DOWN,
          BOARD_LIGHT ->
          String.format(Locale.ROOT, "%.3f", value);
    };
  }

  /**
   * Says whether a change is so large that what photos measure is not to be trusted. Smaller ones,
   * and those that each photo's own pose and evened light take out, are said and measured on.
   *
   * <p>Working values: blur of three times the usual and over 2 px, veiling light of a third of
   * white (rendered haze of 0.14 with edges blurred twice as much cost open sites no accuracy: 2 %
   * median error, as without), marks that fit half as well and miss by 3 mm (late in a crop leaves
   * hide marks, and the edges that stand in for them fit to some tenths of a mm), a height off by a
   * twentieth (a tenth of an area) that only another lens or mount explains.
   *
   * @param value the new value
   * @param usual what it was before
   * @return whether photos are to be held
   */
  public boolean holds(double value, double usual) {
    return switch (this) {
      case SHARPNESS -> value < 0.5 * usual;
      case EDGE_BLUR -> value > Math.max(3 * usual, 2);
      case HAZE -> value > usual + 0.33;
      case POSE_ERROR -> value > Math.max(2 * usual, 3);
      case HEIGHT -> Math.abs(value / usual - 1) > 0.05;
      case EXPOSURE,
          LIGHT_CAST,
          FOULING,
          VIGNETTING,
          LIGHT_ACROSS,
          LIGHT_DOWN,
          BOARD_LIGHT,
          SHIFT_RIGHT,
          SHIFT_DOWN,
          TURN,
          PAIR_ROWS ->
          false;
    };
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
      case EDGE_BLUR -> high ? "the boards' edges are blurred" : "";
      case HAZE -> high ? "a haze lies over the photos" : "";
      case FOULING -> high ? "one part of the picture is blurred" : "";
      case VIGNETTING ->
          high ? "the picture's rim has become darker" : "the picture's rim has become brighter";
      case LIGHT_ACROSS ->
          high ? "the light has moved to the right" : "the light has moved to the left";
      case LIGHT_DOWN ->
          high ? "the light has moved to the lower side" : "the light has moved to the upper side";
      case BOARD_LIGHT ->
          high ? "the boards have become brighter" : "the boards have become darker";
      case SHIFT_RIGHT ->
          high ? "the picture has moved to the right" : "the picture has moved to the left";
      case SHIFT_DOWN -> high ? "the picture has moved down" : "the picture has moved up";
      case TURN -> "the picture has turned";
      case PAIR_ROWS -> "the two cameras no longer sit as they did to each other";
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
      case SHARPNESS, EDGE_BLUR ->
          "wipe the lens, look for fog and drops, check focus and the mount";
      case HAZE -> "wipe the lens, look for fog, and for lamps or sun that shine into it";
      case FOULING -> "wipe the lens and its window";
      case EXPOSURE -> "set the exposure by the board again";
      case LIGHT_CAST -> "check that every lamp burns and is white, and the white balance";
      case VIGNETTING -> "check the lens, its hood and zoom, and lamps near the rim";
      case LIGHT_ACROSS, LIGHT_DOWN, BOARD_LIGHT ->
          "check that every lamp burns, and for sun or shade on the boards";
      case HEIGHT -> "check water level, mount, zoom and focus";
      case POSE_ERROR -> "check for bent boards, loose marks, a changed lens or zoom";
      case SHIFT_RIGHT, SHIFT_DOWN, TURN ->
          "fasten the camera; if it is to stay so, set its slots up anew";
      case PAIR_ROWS -> "fasten both cameras, then calibrate the pair again (station pair)";
    };
  }
}
