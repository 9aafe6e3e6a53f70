// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * What a second worker brings over a long run, and the memory that takes. A run over four times
 * fewer photos is taken off, and with it the start and the warm-up.
 *
 * @param photos of the long run
 * @param first photos that do not count
 * @param one by one worker, photos a second
 * @param two by two workers
 * @param peakMb most resident memory of the long run by two workers
 */
record LongRun(int photos, int first, double one, double two, double peakMb) {
  /** Photos of a long run; the last ones are measured as fast as any after them. */
  private static final int PHOTOS = 96;

  /** Of so many photos code is optimised, as it is of all. */
  private static final int FIRST = 24;

  /**
   * Measures.
   *
   * @param set the rendered set
   * @param asked for the folder to work in and the checkout
   * @param photos of the set
   */
  static LongRun over(Path set, PacePage.Asked asked, int photos)
      throws IOException, InterruptedException {
    int all = photos * Math.max(2, PHOTOS / photos);
    int first = photos * Math.max(1, FIRST / photos);
    double[] rates = new double[2];
    double peak = 0;
    for (int workers = 1; workers <= 2; workers++) {
      WholeRun few =
          run(set, asked, first / photos, new WholeRun.Call(asked.options(), all, workers, false));
      WholeRun many =
          run(set, asked, all / photos, new WholeRun.Call(asked.options(), all, workers, false));
      rates[workers - 1] = (all - first) / (many.wallSeconds() - few.wallSeconds());
      peak = many.peakMb();
    }
    return new LongRun(all, first, rates[0], rates[1], peak);
  }

  private static WholeRun run(Path set, PacePage.Asked asked, int times, WholeRun.Call call)
      throws IOException, InterruptedException {
    Path many = ManyTimes.of(set, asked.work().resolve("many"), times);
    return WholeRun.over(many, asked.work().resolve("run"), call);
  }

  /** Words it. */
  String words() {
    return String.format(
        Locale.ROOT,
        "Over a long run of %d photos, these many times over and the first %d not counted: %.2f"
            + " photos a second by one worker, %.2f by two, %.2f times as many (aimed at: 1.9); at"
            + " most %.0f MB resident by two (aimed at: 700).%n",
        photos,
        first,
        one,
        two,
        two / one,
        peakMb);
  }
}
