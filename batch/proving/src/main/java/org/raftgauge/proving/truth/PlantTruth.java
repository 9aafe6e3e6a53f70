// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.truth;

/**
 * The truth about one plant.
 *
 * @param projectedAreaCm2 deck covered by the plant alone, stems included, cm2
 * @param visibleAreaCm2 the part of it that nothing else covers, cm2
 * @param meanHeightMm mean height of its top surface over the deck, mm; 0 without a plant
 * @param topHeightMm its highest point, mm; 0 without a plant
 */
public record PlantTruth(
    double projectedAreaCm2, double visibleAreaCm2, double meanHeightMm, double topHeightMm) {

  /** The truth about an empty site. */
  public static final PlantTruth NONE = new PlantTruth(0, 0, 0, 0);
}
