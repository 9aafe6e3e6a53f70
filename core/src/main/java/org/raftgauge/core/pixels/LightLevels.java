// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

/**
 * Linear light in 65,536 levels, for whatever averages code values: light mixes linearly, code
 * values do not. Every code comes back as itself.
 *
 * <p>Source: IEC 61966-2-1, as {@link Srgb}.
 */
public final class LightLevels {
  private static final short[] OF_CODE = new short[256];
  private static final byte[] CODE = new byte[0x10000];

  static {
    for (int v = 0; v < OF_CODE.length; v++) {
      OF_CODE[v] = (short) Math.round(0xffff * Srgb.linear(v / 255.0));
    }
    for (int v = 0; v < CODE.length; v++) {
      CODE[v] = (byte) Math.round(255 * Srgb.coded(v / 65535.0));
    }
  }

  private LightLevels() {}

  /**
   * Writes the levels of code values, unsigned, where they are wanted.
   *
   * @param codes code values
   * @param first of them, index
   * @param levels where to
   * @param at where the first goes, index
   * @param count of values
   */
  public static void ofCodes(byte[] codes, int first, short[] levels, int at, int count) {
    for (int i = 0; i < count; i++) {
      levels[at + i] = OF_CODE[codes[first + i] & 0xff];
    }
  }

  /**
   * Codes levels.
   *
   * @param levels unsigned
   * @return the code values, in the same order
   */
  public static byte[] coded(short[] levels) {
    byte[] codes = new byte[levels.length];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = CODE[levels[i] & 0xffff];
    }
    return codes;
  }
}
