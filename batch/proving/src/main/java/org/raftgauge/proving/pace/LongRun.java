// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pace;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * What a second worker brings over a long run. The run over the set's own photos is taken off, and
 * with it the start and most of the warm-up.
 *
 * @param times that each photo is there
 * @param first photos that do not count
 * @param one by one worker, photos a second
 * @param two by two workers
 */
record LongRun(int times, int first, double one, double two) {
  /** Photos of a long run; the last ones are measured as fast as any after them. */
  private static final int PHOTOS = 96;

  /** Tells how long the run over the set itself took. */
  interface SetAlone {
    WholeRun of(WholeRun.Call call);
  }

  /**
   * Measures.
   *
   * @param set the rendered set
   * @param asked for the folder to work in and the checkout
   * @param photos of the set
   * @param itself runs over the set itself
   */
  static LongRun over(Path set, PacePage.Asked asked, int photos, SetAlone itself)
      throws IOException, InterruptedException {
    int times = Math.max(2, PHOTOS / photos);
    Path many = ManyTimes.of(set, asked.work().resolve("many"), times);
    int more = (times - 1) * photos;
    double[] rates = new double[2];
    for (int workers = 1; workers <= 2; workers++) {
      WholeRun.Call call = new WholeRun.Call(asked.options(), workers, false);
      WholeRun run = WholeRun.over(many, asked.work().resolve("run"), call);
      rates[workers - 1] = more / (run.wallSeconds() - itself.of(call).wallSeconds());
    }
    return new LongRun(times, photos, rates[0], rates[1]);
  }

  /** Words it. */
  String words() {
    return String.format(
        Locale.ROOT,
        "Over a long run, the same photos %d times over and the first %d not counted: %.2f photos a"
            + " second by one worker, %.2f by two, %.2f times as many (aimed at: 1.9).%n",
        times,
        first,
        one,
        two,
        two / one);
  }
}
