// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a harvest plan yields of a crop on a day.
 *
 * @param crop the crop
 * @param date the day
 * @param rafts harvested that day
 * @param heads on them
 * @param weightG their weight, g
 * @param salesG mean weight after trimming, g
 * @param packs whole packs of that and of what was left from the days before, where the crop is
 *     packed by weight
 * @param leftG what fills no pack and is carried to the next day, g
 * @param waitingRafts ready by the end of the day, more likely than not, and not yet harvested
 * @param waitingG their mean weight on the day, g, carried over on the water
 * @param warnings what a reader must know, in words
 */
public record PlanDay(
    String crop,
    LocalDate date,
    List<String> rafts,
    double heads,
    Amount weightG,
    double salesG,
    OptionalDouble packs,
    double leftG,
    List<String> waitingRafts,
    double waitingG,
    List<String> warnings) {

  /** Copies the lists. */
  public PlanDay {
    rafts = List.copyOf(rafts);
    waitingRafts = List.copyOf(waitingRafts);
    warnings = List.copyOf(warnings);
  }
}
