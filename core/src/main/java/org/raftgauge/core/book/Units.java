// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

/** Units of the reports for people; tables for programs are metric. */
public enum Units {
  /** Grams, kilograms, square centimetres, degrees Celsius. */
  METRIC("cm\u00b2", 1, "g", 1, "kg", 1000),
  /**
   * Ounces, pounds, square inches, degrees Fahrenheit: 1 in is 2.54 cm and 1 lb 453.59237 g exactly
   * (international yard and pound agreement, 1959).
   */
  IMPERIAL("sq in", 6.4516, "oz", 28.349523125, "lb", 453.59237);

  private final String areaUnit;
  private final double cm2;
  private final String smallUnit;
  private final double smallG;
  private final String weightUnit;
  private final double weightG;

  Units(
      String areaUnit,
      double cm2,
      String smallUnit,
      double smallG,
      String weightUnit,
      double weightG) {
    this.areaUnit = areaUnit;
    this.cm2 = cm2;
    this.smallUnit = smallUnit;
    this.smallG = smallG;
    this.weightUnit = weightUnit;
    this.weightG = weightG;
  }

  /** Returns the unit of leaf areas. */
  public String areaUnit() {
    return areaUnit;
  }

  /**
   * Turns a leaf area into that unit.
   *
   * @param areaCm2 cm2
   */
  public double area(double areaCm2) {
    return areaCm2 / cm2;
  }

  /** Returns the unit of heads. */
  public String headUnit() {
    return smallUnit;
  }

  /**
   * Turns the weight of a head into that unit.
   *
   * @param grams g
   */
  public double head(double grams) {
    return grams / smallG;
  }

  /** Returns the unit of whole rafts. */
  public String weightUnit() {
    return weightUnit;
  }

  /**
   * Turns the weight of a raft into that unit.
   *
   * @param grams g
   */
  public double weight(double grams) {
    return grams / weightG;
  }
}
