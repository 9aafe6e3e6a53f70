// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

/**
 * How well a canopy mask agrees with the one drawn by hand on a real photo.
 *
 * @param set the set
 * @param photo the file's name
 * @param truthShare share of the photo that is plant by hand, 0..1
 * @param ours the measurement's agreement
 * @param rimGiven the measurement's agreement if all within 3 px of the drawn outline were right
 * @param plain the agreement of excess green with Otsu's threshold
 */
public record RealPhotoScore(
    RealSet set,
    String photo,
    double truthShare,
    Agreement ours,
    Agreement rimGiven,
    Agreement plain) {

  /**
   * Agreement of two masks.
   *
   * @param dice {@code 2 |A and B| / (|A| + |B|)}, 0..1; 1 where both are empty
   * @param areaRatio found area over true area
   * @param falseShare share of the photo that is found and not true, 0..1
   */
  public record Agreement(double dice, double areaRatio, double falseShare) {

    /** Compares a found mask with the true one, of the same length. */
    static Agreement of(boolean[] found, boolean[] truth) {
      int both = 0;
      int a = 0;
      int b = 0;
      for (int i = 0; i < truth.length; i++) {
        both += found[i] && truth[i] ? 1 : 0;
        a += found[i] ? 1 : 0;
        b += truth[i] ? 1 : 0;
      }
      double dice = a + b == 0 ? 1 : 2.0 * both / (a + b);
      return new Agreement(dice, (double) a / Math.max(1, b), (double) (a - both) / truth.length);
    }
  }
}
