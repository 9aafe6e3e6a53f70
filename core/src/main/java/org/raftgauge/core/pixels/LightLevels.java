// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.pixels;

/**
 * Linear light in 65,536 levels, for whatever averages code values: light mixes linearly, code
 * values do not. Every code comes back as itself.
 *
 * <p>Source: IEC 61966-2-1, as {@link Srgb}.
 */
public final class LightLevels {
  private static final float[] OF_CODE = new float[256];
  private static final byte[] CODE = new byte[0x10000];

  static {
    for (int v = 0; v < OF_CODE.length; v++) {
      OF_CODE[v] = (float) Math.rint(0xffff * Srgb.linear(v / 255.0));
    }
    for (int v = 0; v < CODE.length; v++) {
      CODE[v] = (byte) Math.round(255 * Srgb.coded(v / 65535.0));
    }
  }

  private LightLevels() {}

  /**
   * Returns the level of a code value.
   *
   * @param code the low 8 bits are used
   * @return a whole number, 0 to 65535
   */
  public static float ofCode(byte code) {
    return OF_CODE[code & 0xff];
  }

  /**
   * Codes a level.
   *
   * @param level 0 to 65535
   * @return the code value
   */
  public static byte coded(int level) {
    return CODE[level];
  }
}
