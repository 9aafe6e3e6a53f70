// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Arrays;

/**
 * Finds the trace of a flipped bit in a JPEG that decodes without complaint.
 *
 * <p>The mean of each block is coded as the difference from the block before (ITU-T T.81, F.1.2.1).
 * A wrong bit there shifts the levels of all blocks that follow by one and the same amount: from
 * some block on to the right edge, and all rows of blocks below. The rim of what is shifted is a
 * stair of one row of blocks across the whole picture, which no scene has.
 *
 * <p>The thresholds are our own, set on flipped bits in rendered photos; photos as they were taken
 * must never be taken for damaged.
 */
final class JpegShift {
  private static final int BLOCK = 8;

  /** Smallest shift told, in levels. */
  private static final int STEP = 5;

  /** A smaller step agrees with no shift that is told. */
  private static final int LEAST_AGREEING = STEP - STEP / 2;

  /** Rows of blocks in which no stair can be told: it needs one above and one below. */
  private static final int MOST_ROWS_PLAIN = 2;

  /** Blocks on either side of the stair. */
  private static final int SIDE_BLOCKS = 2;

  private static final double RIM_FRACTION = 0.75;
  private static final double ELSEWHERE_FRACTION = 0.2;

  private final byte[] levels;
  private final int width;
  private final int bands;
  private final int rows;
  private final int columns;
  private final int blockWidth;
  private final int blockHeight;

  private JpegShift(byte[] levels, byte[] file, int frame) {
    this.levels = levels;
    int height = twoBytes(file, frame + 1);
    this.width = twoBytes(file, frame + 3);
    this.bands = file[frame + 5];
    int across = 1;
    int down = 1;
    for (int i = 0; i < bands && bands > 1; i++) {
      int sampling = file[frame + 7 + 3 * i];
      across = Math.max(across, sampling >> 4 & 0xf);
      down = Math.max(down, sampling & 0xf);
    }
    this.blockWidth = BLOCK * across;
    this.blockHeight = BLOCK * down;
    this.columns = width / blockWidth;
    this.rows = height / blockHeight;
  }

  /**
   * Takes a decoded picture.
   *
   * @param levels as stored, channels interleaved; not changed
   * @param file the JPEG it comes from, passed by {@link ReadJpegHeader}; not changed
   * @return the picture, to be asked
   */
  static JpegShift of(byte[] levels, byte[] file) {
    JpegSegments segments = new JpegSegments(file);
    while (segments.next() && !segments.isFrame()) {
      // on to the frame header
    }
    return new JpegShift(levels, file, segments.data());
  }

  private static int twoBytes(byte[] file, int at) {
    return (file[at] & 0xff) << 8 | (file[at + 1] & 0xff);
  }

  /** Says whether a stair runs across the picture in any channel. */
  boolean isThere() {
    if (rows <= MOST_ROWS_PLAIN) {
      return false;
    }
    for (int band = 0; band < bands; band++) {
      int above = stepping(1, band);
      for (int row = 1; row + 1 < rows; row++) {
        int below = stepping(row + 1, band);
        if (above + below >= RIM_FRACTION * columns
            && isStair(steps(row, band), steps(row + 1, band))) {
          return true;
        }
        above = below;
      }
    }
    return false;
  }

  /**
   * Returns at how many blocks of a row the step can agree with any shift, told without sorting.
   */
  private int stepping(int row, int band) {
    int[] differences = new int[blockWidth];
    int stepping = 0;
    for (int column = 0; column < columns; column++) {
      differences(row, column, band, differences);
      int up = 0;
      int down = 0;
      for (int difference : differences) {
        up += difference >= LEAST_AGREEING ? 1 : 0;
        down += difference <= -LEAST_AGREEING ? 1 : 0;
      }
      // The middle one of them is at blockWidth / 2 from below.
      stepping += up >= blockWidth - blockWidth / 2 || down > blockWidth / 2 ? 1 : 0;
    }
    return stepping;
  }

  /** The step in level from one row of blocks to the next, at one block. */
  private record Step(int levels, boolean clipped) {
    boolean isThere() {
      return Math.abs(levels) >= STEP;
    }

    boolean agreesWith(int shift) {
      boolean same = Math.abs(levels - shift) <= Math.max(STEP / 2, Math.abs(shift) / 4);
      return same || (clipped && isThere() && levels > 0 == shift > 0);
    }
  }

  /**
   * Compares the levels across the rim with those on either side of it, which takes slopes out.
   * Colour is mixed next to the rim where it is stored at half size, so there the rows lie further
   * apart.
   */
  private Step[] steps(int row, int band) {
    Step[] steps = new Step[columns];
    int[] differences = new int[blockWidth];
    for (int column = 0; column < columns; column++) {
      boolean clipped = differences(row, column, band, differences);
      steps[column] = new Step(median(differences), clipped);
    }
    return steps;
  }

  /** Writes the steps of a block's columns and says whether most of what lies below is clipped. */
  private boolean differences(int row, int column, int band, int[] differences) {
    int gap = band == 0 ? 1 : 3;
    int line = width * bands;
    int above = (row * blockHeight - (gap + 1) / 2) * line + column * blockWidth * bands + band;
    int black = 0;
    int white = 0;
    for (int i = 0, at = above; i < blockWidth; i++, at += bands) {
      int upper = levels[at] & 0xff;
      int lower = levels[at + gap * line] & 0xff;
      int slopes =
          upper - (levels[at - gap * line] & 0xff) + (levels[at + 2 * gap * line] & 0xff) - lower;
      black += lower <= 1 ? 1 : 0;
      white += lower >= 254 ? 1 : 0;
      differences[i] = lower - upper - slopes / 2;
    }
    return 2 * black > blockWidth || 2 * white >= blockWidth;
  }

  /** Returns the middle value of a non-empty array, which it sorts. */
  private static int median(int[] values) {
    Arrays.sort(values);
    return values[values.length / 2];
  }

  private boolean isStair(Step[] above, Step[] below) {
    int at = stair(above, below);
    if (at < SIDE_BLOCKS || at > columns - SIDE_BLOCKS) {
      return false;
    }
    Step[] rim = new Step[columns];
    int elsewhere = 0;
    for (int i = 0; i < columns; i++) {
      rim[i] = i < at ? below[i] : above[i];
      elsewhere += (i < at ? above[i] : below[i]).isThere() ? 1 : 0;
    }
    int shift = shift(rim);
    long agreeing = Arrays.stream(rim).filter(step -> step.agreesWith(shift)).count();
    return Math.abs(shift) >= STEP
        && agreeing >= RIM_FRACTION * columns
        && elsewhere <= ELSEWHERE_FRACTION * columns;
  }

  private static int shift(Step[] rim) {
    int[] free = Arrays.stream(rim).filter(s -> !s.clipped()).mapToInt(Step::levels).toArray();
    int[] all = Arrays.stream(rim).mapToInt(Step::levels).toArray();
    return median(free.length * 2 > all.length ? free : all);
  }

  /**
   * Returns the block at which the stair most likely goes up: steps below before it, above after.
   */
  private int stair(Step[] above, Step[] below) {
    int best = 0;
    int bestScore = 0;
    int score = 0;
    for (int i = 0; i < columns; i++) {
      score += (below[i].isThere() ? 1 : 0) - (above[i].isThere() ? 1 : 0);
      if (score > bestScore) {
        bestScore = score;
        best = i + 1;
      }
    }
    return best;
  }
}
