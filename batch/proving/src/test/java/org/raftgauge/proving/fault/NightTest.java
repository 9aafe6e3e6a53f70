// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.BookReading;
import org.raftgauge.core.book.CropBook;

class NightTest {
  private static final PondStation STATION = PondStation.draw("pond-0", new Random(3));
  private static final Night USUAL = Night.usual(STATION, new Random(4));

  @TempDir private Path folder;

  /** How far the middle of the deck moves in the picture, px. */
  private static double movedPx(Night night) {
    double[] before = USUAL.camera(STATION).project(780, 495, 0);
    double[] after = night.camera(STATION).project(780, 495, 0);
    return Math.hypot(after[0] - before[0], after[1] - before[1]);
  }

  @Test
  void aKnockedCameraShiftsThePictureByThePxItSays() {
    // A tilt by px / f shifts the middle by f tan(px / f) and the lens adds under 1 %.
    assertEquals(3, movedPx(USUAL.with(Fault.KNOCK_3, new Random(1))), 0.05);
    assertEquals(10, movedPx(USUAL.with(Fault.KNOCK_10, new Random(1))), 0.15);
    assertEquals(40, movedPx(USUAL.with(Fault.KNOCK_40, new Random(1))), 0.6);
  }

  @Test
  void aTurnedCameraTurnsThePictureByHalfADegree() {
    Night turned = USUAL.with(Fault.TURN, new Random(1));
    assertEquals(
        0.5, Math.toDegrees(Math.abs(turned.hold().turnRad() - USUAL.hold().turnRad())), 1e-9);
  }

  @Test
  void lowerWaterMakesBoardsSmallerByTheShareOfTheHeight() {
    Night lower = USUAL.with(Fault.WATER, new Random(1));
    double height = USUAL.hold().heightMm();
    assertEquals(span(USUAL) * height / (height + 40), span(lower), 0.3);
  }

  /** Px between two places of the deck a metre apart. */
  private static double span(Night night) {
    double[] a = night.camera(STATION).project(280, 495, 0);
    double[] b = night.camera(STATION).project(1280, 495, 0);
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  }

  @Test
  void aFaultChangesNothingBesideItself() {
    Night fogged = USUAL.with(Fault.FOG, new Random(1));
    assertEquals(USUAL.hold(), fogged.hold());
    assertEquals(USUAL.lens(), fogged.lens());
    assertEquals(USUAL.light(), fogged.light());
    assertTrue(fogged.optics().haze() > USUAL.optics().haze() + 0.1);
    assertEquals(USUAL.light(), USUAL.with(Fault.KNOCK_40, new Random(1)).light());
  }

  @Test
  void faultsAreDrawnApart() {
    List<Integer> numbers = Arrays.stream(Fault.values()).map(Fault::number).toList();
    assertEquals(numbers.size(), numbers.stream().distinct().count());
  }

  @Test
  void theBookOfAStationReadsWithoutAProblem() throws IOException {
    STATION.writeBook(folder);
    BookReading reading = CropBook.read(folder);
    assertEquals(List.of(), reading.problems().stream().map(Object::toString).toList());
    assertEquals(3, reading.book().station("pond-0").orElseThrow().slots().size());
  }
}
