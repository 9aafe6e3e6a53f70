// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class OneDecimalTest {
  private final OneDecimal.Tenths tenths = new OneDecimal.Tenths();

  /** The JDK's own, which it stands for. */
  private final DecimalFormat exact =
      new DecimalFormat("#.#", DecimalFormatSymbols.getInstance(Locale.ROOT));

  private void sameAsExact(double number) {
    assertEquals(exact.format(number), tenths.format(number), () -> "of " + number);
  }

  @Test
  void numbersOfAnySizeAreWrittenAsTheJdkWritesThem() {
    Random random = new Random(3);
    for (int i = 0; i < 100_000; i++) {
      sameAsExact(random.nextGaussian() * Math.pow(10, random.nextInt(12) - 3));
      // Floats too: coordinates of letters are some.
      sameAsExact((float) (random.nextGaussian() * 100));
    }
  }

  @Test
  void middlesBetweenTenthsGoWhereTheirExactDigitsSay() {
    for (int i = -2_000; i <= 2_000; i++) {
      double middle = i / 20.0;
      DoubleStream.of(middle, Math.nextUp(middle), Math.nextDown(middle), middle + 1e-7)
          .forEach(this::sameAsExact);
    }
  }

  @Test
  void whatIsNoUsualNumberIsWrittenAsTheJdkWritesIt() {
    DoubleStream.of(
            0, -0.0, -0.04, 0.96, 1e7, 9_999_999.95, 1e15, Double.NaN, Double.NEGATIVE_INFINITY)
        .forEach(this::sameAsExact);
  }
}
