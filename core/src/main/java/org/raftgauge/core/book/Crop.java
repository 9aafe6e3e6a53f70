// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the book says of a crop, or of a variety of it.
 *
 * @param name as the book names it
 * @param colourModel name of the colour model: built in, or taught
 * @param taught the taught colour model of that name, where there is one that can be used
 * @param heightModel canopy height from area
 * @param emergedByDas days after sowing by which canopy must show, where given
 * @param limits limits of the verdicts
 * @param harvest what it is harvested at, where given
 * @param grader name of the file in {@code graders/} that tells its weight, where given
 * @param curve its usual growth, where given
 * @param transplant when a tray is ready to be transplanted, where given
 */
public record Crop(
    String name,
    String colourModel,
    Optional<TaughtColour> taught,
    HeightModel heightModel,
    OptionalDouble emergedByDas,
    Limits limits,
    Optional<Harvest> harvest,
    Optional<String> grader,
    Optional<CropCurve> curve,
    Optional<TransplantRule> transplant) {

  /**
   * Describes a crop with a built-in colour model and without a grader.
   *
   * @param name as the book names it
   * @param colourModel name of the colour model
   * @param heightModel canopy height from area
   * @param emergedByDas days after sowing by which canopy must show, where given
   * @param limits limits of the verdicts
   * @param harvest what it is harvested at, where given
   */
  public Crop(
      String name,
      String colourModel,
      HeightModel heightModel,
      OptionalDouble emergedByDas,
      Limits limits,
      Optional<Harvest> harvest) {
    this(
        name,
        colourModel,
        Optional.empty(),
        heightModel,
        emergedByDas,
        limits,
        harvest,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * Describes a crop with a built-in colour model and without harvest targets.
   *
   * @param name as the book names it
   * @param colourModel name of the colour model
   * @param heightModel canopy height from area
   * @param emergedByDas days after sowing by which canopy must show, where given
   * @param limits limits of the verdicts
   */
  public Crop(
      String name,
      String colourModel,
      HeightModel heightModel,
      OptionalDouble emergedByDas,
      Limits limits) {
    this(name, colourModel, heightModel, emergedByDas, limits, Optional.empty());
  }

  /**
   * Returns what measuring a photo needs of it: the colour model, the height model and the closed
   * limit. Verdicts, forecasts and the grader ask for the rest anew each time.
   */
  public Crop forMeasuring() {
    Limits usual = Limits.defaults();
    return new Crop(
        name,
        colourModel,
        taught,
        heightModel,
        OptionalDouble.empty(),
        new Limits(usual.laggingShare(), usual.aheadShare(), limits.closedOutline()),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * Limits of the verdicts and of the closed flag.
   *
   * @param laggingShare share of the expected area under which a site lags, 0..1
   * @param aheadShare share of the expected area over which a site is ahead, above 1
   * @param closedOutline share of a site's outline shared with neighbours past which it counts as
   *     closed, 0..1
   */
  public record Limits(double laggingShare, double aheadShare, double closedOutline) {

    /** Returns the defaults of the design: 0.78, 1.35 and 0.35. */
    public static Limits defaults() {
      return new Limits(0.78, 1.35, 0.35);
    }
  }
}
