// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.ClimateDay;

class HouseClimateTest {
  private static final LocalDate DAY = LocalDate.of(2027, 3, 1);

  private static ClimateDay day(String pond, int day, double meanC) {
    OptionalDouble none = OptionalDouble.empty();
    return new ClimateDay(
        2 + day, pond, DAY.plusDays(day), OptionalDouble.of(meanC), none, none, none);
  }

  @Test
  void degreeDaysAreSummedOverFourDegreesWithTheLastDayInPart() {
    HouseClimate house = HouseClimate.of(List.of(day("", 1, 24), day("", 0, 14), day("", 2, 2)));
    // By hand: 10 + 20 * 0.75; then 10 + 20 and nothing of a day under 4 degrees.
    assertEquals(25, house.degreeDays(DAY, 1.75).orElseThrow(), 1e-9);
    assertEquals(30, house.degreeDays(DAY, 2.9).orElseThrow(), 1e-9);
    assertEquals(15, house.degreeDays(DAY.plusDays(1), 0.75).orElseThrow(), 1e-9);
  }

  @Test
  void rowsOfTheHouseGoBeforeRowsOfPondsAndPondsAreAveraged() {
    HouseClimate house =
        HouseClimate.of(
            List.of(day("P1", 0, 10), day("P2", 0, 18), day("P1", 1, 10), day("", 1, 24)));
    // By hand: (10 + 18) / 2 - 4 = 10, then 24 - 4 = 20.
    assertEquals(20, house.degreeDays(DAY, 1.5).orElseThrow(), 1e-9);
  }

  @Test
  void gapOfAWeekTakesTheLastTemperatureAndALongerOneLeavesDegreeDaysOpen() {
    HouseClimate week = HouseClimate.of(List.of(day("", 0, 14), day("", 8, 24)));
    // By hand: day 0 and the seven after it at 10 each, then half a day at 20.
    assertEquals(90, week.degreeDays(DAY, 8.5).orElseThrow(), 1e-9);
    HouseClimate longer = HouseClimate.of(List.of(day("", 0, 14), day("", 9, 24)));
    assertTrue(longer.degreeDays(DAY, 9.5).isEmpty());
    assertEquals(10, longer.degreeDays(DAY.plusDays(9), 0.5).orElseThrow(), 1e-9);
  }

  @Test
  void daysBeforeTheFirstAndAWeekAfterTheLastAreNotKnown() {
    HouseClimate house = HouseClimate.of(List.of(day("", 0, 14)));
    assertTrue(house.degreeDays(DAY.minusDays(1), 1).isEmpty());
    // By hand: eight days, seven of them filled, at 10 each; the end of the last is out.
    assertEquals(79, house.degreeDays(DAY, 7.9).orElseThrow(), 1e-9);
    assertTrue(house.degreeDays(DAY, 8).isEmpty());
    assertTrue(HouseClimate.NONE.degreeDays(DAY, 1).isEmpty());
  }
}
