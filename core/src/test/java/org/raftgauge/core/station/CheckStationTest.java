// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

class CheckStationTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 3, 1);

  /** Evenings as they usually are: scatter of a station whose boards float and crops grow. */
  private static List<StationEvening> evenings(int n) {
    Random random = new Random(6);
    List<StationEvening> evenings = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      evenings.add(
          new StationEvening(
              FIRST.plusDays(i),
              OptionalDouble.of(0.62 + 0.01 * random.nextGaussian()),
              OptionalDouble.of(Math.abs(0.004 * random.nextGaussian())),
              OptionalDouble.of(0.03 + 0.004 * random.nextGaussian()),
              OptionalDouble.of(2050 + 3 * random.nextGaussian()),
              OptionalDouble.of(0.9 + 0.1 * random.nextGaussian())));
    }
    return evenings;
  }

  private static List<StationEvening> changed(int from, UnaryOperator<StationEvening> by) {
    List<StationEvening> evenings = evenings(24);
    for (int i = from; i < evenings.size(); i++) {
      evenings.set(i, by.apply(evenings.get(i)));
    }
    return evenings;
  }

  private static StationFault only(List<StationEvening> evenings) {
    List<StationFault> faults = CheckStation.check(evenings);
    assertEquals(1, faults.size(), faults.toString());
    return faults.get(0);
  }

  @Test
  void usualStationHasNoFaults() {
    assertEquals(List.of(), CheckStation.check(evenings(24)));
    assertEquals(5, CheckStation.judged(evenings(24)));
  }

  @Test
  void shortPastIsNotJudged() {
    assertEquals(List.of(), CheckStation.check(evenings(6)));
    assertEquals(0, CheckStation.judged(evenings(6)));
    assertEquals(List.of(), CheckStation.check(List.of()));
  }

  @Test
  void waterThatIsFortyMmLowerIsSeenTheSameEvening() {
    StationFault fault =
        only(
            changed(
                23,
                e ->
                    new StationEvening(
                        e.evening(),
                        e.sharpness(),
                        e.exposureClippedFraction(),
                        e.lightCast(),
                        OptionalDouble.of(e.cameraHeightMm().getAsDouble() + 40),
                        e.poseErrorMm())));
    assertEquals(StationSign.HEIGHT, fault.sign());
    assertEquals(FIRST.plusDays(23), fault.since());
    assertEquals(1, fault.evenings());
    assertTrue(fault.meaning().contains("the water is lower or the camera higher"));
    assertTrue(fault.remedy().contains("water level"));
  }

  @Test
  void foggedLensIsSaidWithTheEveningItBegan() {
    StationFault fault =
        only(
            changed(
                19,
                e ->
                    new StationEvening(
                        e.evening(),
                        OptionalDouble.of(e.sharpness().getAsDouble() - 0.2),
                        e.exposureClippedFraction(),
                        e.lightCast(),
                        e.cameraHeightMm(),
                        e.poseErrorMm())));
    assertEquals(StationSign.SHARPNESS, fault.sign());
    assertEquals(FIRST.plusDays(19), fault.since());
    assertEquals(5, fault.evenings());
    assertTrue(fault.remedy().startsWith("wipe the lens"));
    assertEquals(0.62, fault.usual(), 0.02);
  }

  @Test
  void sharperPhotosAreNoFault() {
    assertEquals(
        List.of(),
        CheckStation.check(
            changed(
                20,
                e ->
                    new StationEvening(
                        e.evening(),
                        OptionalDouble.of(0.9),
                        e.exposureClippedFraction(),
                        e.lightCast(),
                        e.cameraHeightMm(),
                        e.poseErrorMm()))));
  }

  @Test
  void faultThatIsOverIsNotSaid() {
    List<StationEvening> evenings = evenings(30);
    StationEvening odd = evenings.get(15);
    evenings.set(
        15,
        new StationEvening(
            odd.evening(),
            odd.sharpness(),
            odd.exposureClippedFraction(),
            OptionalDouble.of(0.3),
            odd.cameraHeightMm(),
            odd.poseErrorMm()));
    assertEquals(List.of(), CheckStation.check(evenings));
  }

  @Test
  void signThatTheNewestEveningLacksIsNotSaid() {
    List<StationEvening> evenings =
        changed(
            22,
            e ->
                new StationEvening(
                    e.evening(),
                    e.sharpness(),
                    e.exposureClippedFraction(),
                    OptionalDouble.of(0.4),
                    e.cameraHeightMm(),
                    e.poseErrorMm()));
    assertEquals(StationSign.LIGHT_CAST, only(evenings).sign());
    StationEvening last = evenings.get(23);
    evenings.set(
        23,
        new StationEvening(
            last.evening(),
            last.sharpness(),
            last.exposureClippedFraction(),
            OptionalDouble.empty(),
            last.cameraHeightMm(),
            last.poseErrorMm()));
    assertEquals(List.of(), CheckStation.check(evenings));
  }

  @Test
  void everyChangeThatIsAFaultHasARemedy() {
    for (StationSign sign : StationSign.values()) {
      for (ControlPoint.State state : ControlPoint.State.values()) {
        assertEquals(
            sign.meaning(state).isEmpty(), sign.remedy(state).isEmpty(), sign + " " + state);
      }
    }
  }
}
