// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.time.LocalDate;
import java.util.OptionalDouble;

/**
 * A day's climate over a pond.
 *
 * @param line its line in {@code climate.csv}
 * @param pond the pond; empty for the whole house
 * @param date the day
 * @param meanAirC mean air temperature, degrees Celsius, where measured
 * @param dliMolM2 daily light integral, mol/m2, where measured
 * @param waterL water added, litres, where measured
 * @param feedG feed added, g, where measured
 */
public record ClimateDay(
    int line,
    String pond,
    LocalDate date,
    OptionalDouble meanAirC,
    OptionalDouble dliMolM2,
    OptionalDouble waterL,
    OptionalDouble feedG) {}
