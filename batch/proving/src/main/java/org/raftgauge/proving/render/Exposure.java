// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

/** A rendered view before the camera's electronics: linear light, labels and coverage per pixel. */
public final class Exposure {
  private final int width;
  private final int height;
  private final float[] rgb;
  private final short[] label;
  private final byte[] coverage;

  Exposure(int width, int height) {
    this.width = width;
    this.height = height;
    this.rgb = new float[3 * width * height];
    this.label = new short[width * height];
    this.coverage = new byte[width * height];
  }

  /** Returns the width, px. */
  public int width() {
    return width;
  }

  /** Returns the height, px. */
  public int height() {
    return height;
  }

  /** Returns the linear light, r g b interleaved, the view's own array; read only. */
  float[] rgb() {
    return rgb;
  }

  /** Returns the labels as unsigned 16-bit numbers, the view's own array; read only. */
  public short[] label() {
    return label;
  }

  /** Returns the coverage by leaf tissue, 0..255 unsigned, the view's own array; read only. */
  public byte[] coverage() {
    return coverage;
  }
}
