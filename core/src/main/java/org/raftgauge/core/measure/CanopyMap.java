// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.Map;
import java.util.function.Supplier;

/**
 * Canopy of a photo in its own pixels: how much of each is canopy, and whose. Only pictures need
 * it, so it is drawn when it is first asked for.
 *
 * <p>Owns its arrays; read only.
 */
public final class CanopyMap {
  /** Numbers a raft's sites may take. */
  private static final int RAFT = 1024;

  private final int width;
  private final int height;
  private final Supplier<Pixels> pixels;

  private CanopyMap(int width, int height, Supplier<Pixels> pixels) {
    this.width = width;
    this.height = height;
    this.pixels = pixels;
  }

  /**
   * Wraps the arrays.
   *
   * @param width px
   * @param height px
   * @param coverage 0..255 for 0..1, length {@code width * height}
   * @param owner 0 where no site owns the pixel, else {@code 1024 * raft + 1 + row * columns +
   *     column} with {@code raft} the raft's place in {@link PhotoMeasure#rafts()}; length {@code
   *     width * height}
   */
  public CanopyMap(int width, int height, byte[] coverage, short[] owner) {
    this(width, height, () -> new Pixels(coverage, owner));
    if (coverage.length != width * height || owner.length != width * height) {
      throw new IllegalArgumentException("coverage and owner must have width * height values");
    }
  }

  /** Returns a map that is drawn once, when its pixels are first asked for. */
  static CanopyMap drawn(int width, int height, Supplier<Pixels> drawing) {
    return new CanopyMap(width, height, new Once(drawing));
  }

  /** The map's pixels. */
  static final class Pixels {
    private final byte[] coverage;
    private final short[] owner;

    Pixels(byte[] coverage, short[] owner) {
      this.coverage = coverage;
      this.owner = owner;
    }
  }

  /** Draws at the first call and remembers. */
  private static final class Once implements Supplier<Pixels> {
    private Supplier<Pixels> drawing;

    Once(Supplier<Pixels> drawing) {
      this.drawing = drawing;
    }

    @Override
    public synchronized Pixels get() {
      Pixels drawn = drawing.get();
      drawing = () -> drawn;
      return drawn;
    }
  }

  /** Returns the map with the sites of some rafts numbered from the other end. */
  CanopyMap turned(Map<Integer, Integer> sitesOfRaft) {
    return drawn(width, height, () -> turned(pixels.get(), sitesOfRaft));
  }

  private static Pixels turned(Pixels pixels, Map<Integer, Integer> sitesOfRaft) {
    short[] turned = pixels.owner.clone();
    for (int i = 0; i < turned.length; i++) {
      int raft = (turned[i] & 0xffff) / RAFT;
      if (turned[i] != 0 && sitesOfRaft.containsKey(raft)) {
        int site = (turned[i] & 0xffff) % RAFT - 1;
        turned[i] = (short) (raft * RAFT + sitesOfRaft.get(raft) - site);
      }
    }
    return new Pixels(pixels.coverage, turned);
  }

  /** Returns the width in px. */
  public int width() {
    return width;
  }

  /** Returns the height in px. */
  public int height() {
    return height;
  }

  /** Returns the coverage, 0..255 a pixel; read only. */
  public byte[] coverage() {
    return pixels.get().coverage;
  }

  /** Returns whose each pixel is; read only. */
  public short[] owner() {
    return pixels.get().owner;
  }
}
