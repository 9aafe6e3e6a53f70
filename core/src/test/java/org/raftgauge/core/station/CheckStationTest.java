// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.plane.EdgeBlur;

class CheckStationTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 3, 1);

  /** Evenings as they usually are: scatter of a station whose boards float and crops grow. */
  private static List<StationEvening> evenings(int n) {
    Random random = new Random(6);
    List<StationEvening> evenings = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Map<StationSign, Double> values = new EnumMap<>(StationSign.class);
      values.put(StationSign.SHARPNESS, 0.62 + 0.01 * random.nextGaussian());
      values.put(StationSign.EXPOSURE, Math.abs(0.004 * random.nextGaussian()));
      values.put(StationSign.LIGHT_CAST, 0.03 + 0.004 * random.nextGaussian());
      values.put(StationSign.HEIGHT, 2050 + 3 * random.nextGaussian());
      values.put(StationSign.POSE_ERROR, 0.9 + 0.1 * random.nextGaussian());
      evenings.add(new StationEvening(FIRST.plusDays(i), values, List.of()));
    }
    return evenings;
  }

  /** The same with edges seen: blur of the whole and of each part, every other part softer. */
  private static List<StationEvening> sharpEvenings(int n) {
    Random random = new Random(8);
    List<StationEvening> evenings = new ArrayList<>();
    for (StationEvening evening : evenings(n)) {
      List<OptionalDouble> cells = new ArrayList<>();
      for (int cell = 0; cell < EdgeBlur.CELLS * EdgeBlur.CELLS; cell++) {
        double usual = cell % 2 == 0 ? 1.2 : 1.0;
        cells.add(OptionalDouble.of(usual + 0.02 * random.nextGaussian()));
      }
      StationEvening blurred =
          evening.with(StationSign.EDGE_BLUR, 1.1 + 0.02 * random.nextGaussian());
      evenings.add(new StationEvening(evening.evening(), blurred.values(), cells));
    }
    return evenings;
  }

  private static List<StationEvening> changed(int from, UnaryOperator<StationEvening> by) {
    return changed(evenings(24), from, by);
  }

  private static List<StationEvening> changed(
      List<StationEvening> evenings, int from, UnaryOperator<StationEvening> by) {
    for (int i = from; i < evenings.size(); i++) {
      evenings.set(i, by.apply(evenings.get(i)));
    }
    return evenings;
  }

  private static UnaryOperator<StationEvening> plus(StationSign sign, double more) {
    return e -> e.with(sign, e.value(sign).getAsDouble() + more);
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
  void waterThatIsFortyMmLowerIsSeenTheSameEveningAndMeasuredOn() {
    StationFault fault = only(changed(23, plus(StationSign.HEIGHT, 40)));
    assertEquals(StationSign.HEIGHT, fault.sign());
    assertEquals(FIRST.plusDays(23), fault.since());
    assertEquals(1, fault.evenings());
    assertTrue(fault.meaning().contains("the water is lower or the camera higher"));
    assertTrue(fault.remedy().contains("water level"));
    assertFalse(fault.holds(), "each photo's own height takes it out");
  }

  @Test
  void heightThatNoWaterExplainsHoldsThePhotos() {
    assertTrue(only(changed(23, plus(StationSign.HEIGHT, 200))).holds());
  }

  @Test
  void unsharpPhotosAreSaidWithTheEveningItBegan() {
    StationFault fault = only(changed(19, plus(StationSign.SHARPNESS, -0.25)));
    assertEquals(StationSign.SHARPNESS, fault.sign());
    assertEquals(FIRST.plusDays(19), fault.since());
    assertEquals(5, fault.evenings());
    assertTrue(fault.remedy().startsWith("wipe the lens"));
    assertEquals(0.62, fault.usual(), 0.02);
  }

  @Test
  void sharperPhotosAreNoFault() {
    assertEquals(List.of(), CheckStation.check(changed(20, plus(StationSign.SHARPNESS, 0.3))));
  }

  @Test
  void sharpnessThatCropsChangeIsPassedOverWhereBoardEdgesAreSeen() {
    List<StationEvening> evenings = sharpEvenings(24);
    assertEquals(
        List.of(), CheckStation.check(changed(evenings, 19, plus(StationSign.SHARPNESS, -0.25))));
  }

  @Test
  void foggedLensBlursTheBoardsEdgesAndHoldsThePhotos() {
    StationFault fault = only(changed(sharpEvenings(24), 22, plus(StationSign.EDGE_BLUR, 2.5)));
    assertEquals(StationSign.EDGE_BLUR, fault.sign());
    assertTrue(fault.holds(), "more than three times as wide");
    assertFalse(only(changed(sharpEvenings(24), 22, plus(StationSign.EDGE_BLUR, 1.3))).holds());
  }

  /** Returns an evening some parts of which are blurred by so many times the usual. */
  private static UnaryOperator<StationEvening> smeared(double times, int... parts) {
    return e -> {
      List<OptionalDouble> cells = new ArrayList<>(e.blurCells());
      for (int part : parts) {
        cells.set(part, OptionalDouble.of(times * cells.get(part).getAsDouble()));
      }
      return new StationEvening(e.evening(), e.values(), cells);
    };
  }

  @Test
  void dropThatBlursOnePlaceIsSaidWithItsPlace() {
    // Of ten parts across and down: the second and third of the eighth row, and two below them.
    StationFault fault = only(changed(sharpEvenings(24), 21, smeared(2, 71, 72, 81, 82)));
    assertEquals(StationSign.FOULING, fault.sign());
    assertEquals("one part of the picture is blurred, at the lower left", fault.meaning());
    assertEquals(Math.log(2), fault.value(), 0.1);
    assertEquals(3, fault.evenings());
    assertTrue(fault.remedy().startsWith("wipe the lens"));
    assertFalse(fault.holds());
  }

  @Test
  void dropIsSaidAsSoonAsEightEveningsAreKnown() {
    assertEquals(
        StationSign.FOULING, only(changed(sharpEvenings(9), 8, smeared(2, 44, 45, 54, 55))).sign());
    assertEquals(
        List.of(), CheckStation.check(changed(sharpEvenings(8), 7, smeared(2, 44, 45, 54, 55))));
  }

  @Test
  void slightSmearIsSaidOnItsSecondEveningAndOnlyWhereItStays() {
    var said = CheckStation.byEvening(changed(sharpEvenings(24), 22, smeared(1.5, 18, 19)));
    assertEquals(List.of(), said.get(FIRST.plusDays(22)));
    StationFault fault = said.get(FIRST.plusDays(23)).get(0);
    assertEquals("one part of the picture is blurred, at the upper right", fault.meaning());
    List<StationEvening> once = sharpEvenings(24);
    once.set(22, smeared(1.5, 18, 19).apply(once.get(22)));
    assertEquals(List.of(), CheckStation.check(once));
  }

  @Test
  void smearOfASinglePartIsLeftToTheCrop() {
    assertEquals(List.of(), CheckStation.check(changed(sharpEvenings(24), 21, smeared(2, 44))));
  }

  @Test
  void blurOfTheWholePictureIsNotASmearOfOnePlace() {
    int[] all = IntStream.range(0, EdgeBlur.CELLS * EdgeBlur.CELLS).toArray();
    assertEquals(List.of(), CheckStation.check(changed(sharpEvenings(24), 21, smeared(2, all))));
  }

  @Test
  void partsWithNothingSharpInThemAreLeftOut() {
    List<StationEvening> evenings = sharpEvenings(24);
    for (int i = 0; i < 24; i++) {
      StationEvening e = evenings.get(i);
      List<OptionalDouble> cells = new ArrayList<>(e.blurCells());
      cells.set(71, OptionalDouble.empty());
      cells.set(72, i % 5 == 0 ? cells.get(72) : OptionalDouble.empty());
      evenings.set(i, new StationEvening(e.evening(), e.values(), cells));
    }
    assertEquals(List.of(), CheckStation.check(evenings));
    assertEquals(StationSign.FOULING, only(changed(evenings, 23, smeared(2.5, 81, 82))).sign());
  }

  @Test
  void aPairWhoseSecondCameraHasMovedIsSaidAndMeasuredOn() {
    Random random = new Random(12);
    List<StationEvening> evenings = new ArrayList<>();
    for (StationEvening e : evenings(24)) {
      evenings.add(e.with(StationSign.PAIR_ROWS, 0.05 + 0.03 * random.nextGaussian()));
    }
    StationFault fault = only(changed(evenings, 23, plus(StationSign.PAIR_ROWS, -1.2)));
    assertEquals(StationSign.PAIR_ROWS, fault.sign());
    assertTrue(fault.finding().contains("(pair rows -1.1"), fault.finding());
    assertTrue(fault.remedy().contains("station pair"));
    assertFalse(fault.holds());
  }

  @Test
  void faultThatIsOverIsNotSaid() {
    List<StationEvening> evenings = evenings(30);
    evenings.set(15, evenings.get(15).with(StationSign.LIGHT_CAST, 0.3));
    assertEquals(List.of(), CheckStation.check(evenings));
    assertEquals(
        List.of(StationSign.LIGHT_CAST),
        CheckStation.byEvening(evenings).get(FIRST.plusDays(15)).stream()
            .map(StationFault::sign)
            .toList());
  }

  @Test
  void lightThatIsOutIsSaidOnItsSecondEveningUnlessItIsFarOut() {
    // Usual 0.03, spread at least 0.01: 0.1 is out by some 7 spreads, 0.3 by 27, over twice 4.5.
    List<StationEvening> evenings = changed(22, e -> e.with(StationSign.LIGHT_CAST, 0.1));
    var said = CheckStation.byEvening(evenings);
    assertEquals(List.of(), said.get(FIRST.plusDays(22)));
    assertEquals(StationSign.LIGHT_CAST, only(evenings).sign());
    assertEquals(2, only(evenings).evenings());
    evenings.set(22, evenings.get(22).with(StationSign.LIGHT_CAST, 0.3));
    assertEquals(1, CheckStation.byEvening(evenings).get(FIRST.plusDays(22)).size());
  }

  @Test
  void signThatTheNewestEveningLacksIsNotSaid() {
    List<StationEvening> evenings = changed(22, e -> e.with(StationSign.LIGHT_CAST, 0.4));
    assertEquals(StationSign.LIGHT_CAST, only(evenings).sign());
    StationEvening last = evenings.get(23);
    Map<StationSign, Double> less = new EnumMap<>(last.values());
    less.remove(StationSign.LIGHT_CAST);
    evenings.set(23, new StationEvening(last.evening(), less, List.of()));
    assertEquals(List.of(), CheckStation.check(evenings));
  }

  @Test
  void whatIsSaidOfAnEveningDoesNotChangeWithLaterOnes() {
    List<StationEvening> evenings = changed(19, plus(StationSign.POSE_ERROR, 1.5));
    var all = CheckStation.byEvening(evenings);
    for (int n = 1; n <= evenings.size(); n++) {
      List<StationEvening> soFar = evenings.subList(0, n);
      assertEquals(all.get(soFar.get(n - 1).evening()), CheckStation.check(soFar), "after " + n);
    }
  }

  @Test
  void marksThatFitWorseByTenthsOfAMillimetreHoldNoPhoto() {
    StationSign sign = StationSign.POSE_ERROR;
    // Leaves hide marks late in a crop: 0.1 mm becomes 0.6 mm by the board's edges alone.
    assertFalse(sign.holds(0.6, 0.1));
    assertTrue(sign.holds(4, 0.4));
    assertFalse(sign.holds(4, 2.5), "as it always was");
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
