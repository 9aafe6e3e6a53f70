// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import org.raftgauge.core.pixels.GreyImage;

/** Makes the second picture as bright and as contrasty as the first. */
final class EvenPair {

  private EvenPair() {}

  /** Gives a picture the mean and spread of another, where both show something (over level 0). */
  static GreyImage asBright(GreyImage image, GreyImage other) {
    double[] have = meanAndSpread(image.levels());
    double[] want = meanAndSpread(other.levels());
    double gain = have[1] > 0 ? want[1] / have[1] : 1;
    byte[] even = image.levels().clone();
    byte[] table = new byte[256];
    for (int level = 1; level < table.length; level++) {
      double value = want[0] + gain * (level - have[0]);
      table[level] = (byte) Math.round(Math.max(1, Math.min(255, value)));
    }
    for (int i = 0; i < even.length; i++) {
      even[i] = table[even[i] & 0xff];
    }
    return GreyImage.of(image.width(), image.height(), even);
  }

  private static double[] meanAndSpread(byte[] levels) {
    int[] counts = new int[256];
    for (byte level : levels) {
      counts[level & 0xff]++;
    }
    double n = Math.max(1, levels.length - (double) counts[0]);
    double mean = 0;
    double squares = 0;
    for (int level = 1; level < counts.length; level++) {
      mean += counts[level] * level / n;
      squares += counts[level] * (double) level * level / n;
    }
    return new double[] {mean, Math.sqrt(Math.max(0, squares - mean * mean))};
  }
}
