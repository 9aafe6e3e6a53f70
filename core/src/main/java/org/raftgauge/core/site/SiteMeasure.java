// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.relief.HeightSource;

/**
 * What one photo says of one planting site.
 *
 * @param site the site
 * @param projectedAreaCm2 projected leaf area seen from straight above, cm2; absent where held
 * @param projectedAreaSeCm2 its standard error, cm2
 * @param visibleAreaCm2 the part of it that nothing covers, cm2
 * @param closed whether its own outline cannot be told from its neighbours'; its area is then a
 *     lower bound
 * @param sharedOutlineFraction share of its outline that touches neighbours, 0..1
 * @param heightMm mean canopy height used, mm over the deck
 * @param parallaxFactor what the area on the deck plane was multiplied by, 0..1
 * @param shape its shape; absent where there is no canopy or it is held
 * @param colour its leaf colour; absent where there is no canopy or it is held
 * @param quality 0 (useless) to 1
 * @param held why it is held, or empty
 * @param relief its height as a second camera saw it; absent where none did
 * @param movedCm2 what of its area came from its neighbours, or went to them where negative, once
 *     the second pass knew the plants' sizes of the evening before; cm2
 */
public record SiteMeasure(
    SiteId site,
    OptionalDouble projectedAreaCm2,
    OptionalDouble projectedAreaSeCm2,
    OptionalDouble visibleAreaCm2,
    boolean closed,
    double sharedOutlineFraction,
    double heightMm,
    double parallaxFactor,
    List<Shape> shape,
    List<Colour> colour,
    double quality,
    String held,
    List<Relief> relief,
    double movedCm2) {

  /** Copies the lists. */
  public SiteMeasure {
    shape = List.copyOf(shape);
    colour = List.copyOf(colour);
    relief = List.copyOf(relief);
  }

  /** A standard error as large as the area says nothing of it; a larger one says no less. */
  private static final double MOST_ERROR = 1;

  /**
   * Returns the standard error of the projected area as a share of it, 0 to 1: measures made
   * elsewhere may come with any error, which then has hardly any weight.
   *
   * @param usualCm2 the error that is taken where none is given, cm2
   * @return the share
   * @throws java.util.NoSuchElementException if there is no area
   */
  public double areaErrorFraction(double usualCm2) {
    double error = projectedAreaSeCm2.orElse(usualCm2) / projectedAreaCm2.orElseThrow();
    return Math.min(MOST_ERROR, error);
  }

  /**
   * Returns the same with another colour.
   *
   * @param other at most one
   * @return the site
   */
  public SiteMeasure withColour(List<Colour> other) {
    return new SiteMeasure(
        site,
        projectedAreaCm2,
        projectedAreaSeCm2,
        visibleAreaCm2,
        closed,
        sharedOutlineFraction,
        heightMm,
        parallaxFactor,
        shape,
        other,
        quality,
        held,
        relief,
        movedCm2);
  }

  /**
   * Returns the same with its borders moved.
   *
   * @param byCm2 what it takes from its neighbours, cm2 of projected area
   * @param seCm2 standard error of its area then, cm2
   * @return the site; its outline and colour stay those of what the photo alone gave it
   */
  public SiteMeasure moved(double byCm2, double seCm2) {
    double times = 1 + byCm2 / projectedAreaCm2.orElseThrow();
    return new SiteMeasure(
        site,
        OptionalDouble.of(projectedAreaCm2.orElseThrow() * times),
        OptionalDouble.of(seCm2),
        OptionalDouble.of(visibleAreaCm2.orElseThrow() * times),
        closed,
        sharedOutlineFraction,
        heightMm,
        parallaxFactor,
        shape.stream().map(s -> s.ofArea(times)).toList(),
        colour,
        quality,
        held,
        relief.stream().map(r -> r.ofArea(times)).toList(),
        movedCm2 + byCm2);
  }

  /**
   * Makes a measure of a site whose height was not seen.
   *
   * @param site the site
   * @param projectedAreaCm2 cm2; absent where held
   * @param projectedAreaSeCm2 cm2
   * @param visibleAreaCm2 cm2
   * @param closed whether its own outline cannot be told
   * @param sharedOutlineFraction 0..1
   * @param heightMm mean canopy height used, mm
   * @param parallaxFactor 0..1
   * @param shape its shape, where there is one
   * @param colour its leaf colour, where there is one
   * @param quality 0 (useless) to 1
   * @param held why it is held, or empty
   */
  public SiteMeasure(
      SiteId site,
      OptionalDouble projectedAreaCm2,
      OptionalDouble projectedAreaSeCm2,
      OptionalDouble visibleAreaCm2,
      boolean closed,
      double sharedOutlineFraction,
      double heightMm,
      double parallaxFactor,
      List<Shape> shape,
      List<Colour> colour,
      double quality,
      String held) {
    this(
        site,
        projectedAreaCm2,
        projectedAreaSeCm2,
        visibleAreaCm2,
        closed,
        sharedOutlineFraction,
        heightMm,
        parallaxFactor,
        shape,
        colour,
        quality,
        held,
        List.of(),
        0);
  }

  /**
   * The height of a plant as a second camera saw it; {@code heightMm} is then its mean.
   *
   * @param source what it is from
   * @param p95Mm height that 5 % of its top surface reach over, mm over the deck
   * @param volumeCm3 room between its top surface and the deck, cm3: projected area times mean
   *     height
   * @param seenFraction share of its leaf whose height was seen, 0..1; the rest is a hole that
   *     nothing fills
   */
  public record Relief(HeightSource source, double p95Mm, double volumeCm3, double seenFraction) {

    private Relief ofArea(double times) {
      return new Relief(source, p95Mm, volumeCm3 * times, seenFraction);
    }
  }

  /**
   * The outline of a plant, corrected for parallax.
   *
   * @param equivalentDiameterMm diameter of the disc of the same area
   * @param largestDiameterMm largest distance between two points of the outline
   * @param perimeterMm length of the outline
   * @param solidity area over area of the convex hull, 0..1
   * @param offsetXMm centroid minus site centre along x
   * @param offsetYMm centroid minus site centre along y
   */
  public record Shape(
      double equivalentDiameterMm,
      double largestDiameterMm,
      double perimeterMm,
      double solidity,
      double offsetXMm,
      double offsetYMm) {

    private Shape ofArea(double times) {
      return new Shape(
          equivalentDiameterMm * Math.sqrt(times),
          largestDiameterMm,
          perimeterMm,
          solidity,
          offsetXMm,
          offsetYMm);
    }
  }

  /**
   * The mean colour of a plant's leaf tissue in evened light, and the shares of pale and dead
   * tissue.
   *
   * @param labL CIELAB L*
   * @param labA CIELAB a*
   * @param labB CIELAB b*
   * @param paleFraction 0..1
   * @param deadFraction 0..1
   */
  public record Colour(
      double labL, double labA, double labB, double paleFraction, double deadFraction) {}
}
