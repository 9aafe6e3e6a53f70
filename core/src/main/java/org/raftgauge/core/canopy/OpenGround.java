// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import org.raftgauge.core.plane.DeckImage;

/**
 * Decides which part of a deck picture is green leaf where there is no board to go by: plants on
 * soil, gravel, matting.
 *
 * <p>The ground's own greenness and the leaves' level set a threshold; the photo's own colours on
 * both sides of it are learned; a pixel must also reach a share of the contrast of the leaf next to
 * it; and a part must stand out from what is about it with a crisp edge. What that finds is the
 * setting for a {@link SecondLook}, or for a taught model's {@link GroundNetwork}. Pixel sizes
 * below assume leaves that are tens of pixels wide. Constants were settled on photos of two field
 * crops with hand-drawn masks and hold within a few hundredths of Dice when varied by a third.
 */
public final class OpenGround {
  /** Samples: every second row and column. */
  private static final int SAMPLE_STEP = 2;

  private static final int GUIDE_REACH_PX = 4;
  private static final float GUIDE_STRENGTH = 0.02f;

  /** Nothing nearer to the ground than to the threshold can be leaf. */
  private static final double GATE = 0.4;

  /** Width of the steps, in contrast. */
  private static final double STEP = 0.1;

  /** Leaf within this reach sets the contrast to be expected of its neighbours. */
  private static final int LOCAL_PX = 10;

  /** Least contrast as a share of the local leaf's: about half height. */
  private static final double RIM_SHARE = 0.36;

  /** Weaker patches near strong leaf are judged apart from it. */
  private static final double CORE_SHARE = 0.6;

  /** Optical blur and JPEG chroma make rims this wide. */
  private static final int RIM_PX = 2;

  private static final double MOST_CONTRAST = 4;

  /**
   * Steepness of coverage about half leaf: a pixel three quarters sure counts whole, so that dull
   * leaf is not measured short.
   */
  private static final float STEEPNESS = 2;

  private final int width;
  private final int height;
  private final Greenness greenness;
  private final GroundLevel level;
  private final float[] contrast;
  private final float[] table;

  private OpenGround(Greenness greenness) {
    this.width = greenness.width;
    this.height = greenness.height;
    this.greenness = greenness;
    Samples samples = Samples.of(greenness);
    this.level = GroundLevel.of(samples.green);
    this.table = LeafColours.learn(samples.green, samples.cells, level);
    this.contrast = new float[width * height];
    for (int i = 0; i < contrast.length; i++) {
      contrast[i] = (float) level.contrast(greenness.green[i]);
    }
  }

  /**
   * Decides how much of each pixel is green leaf.
   *
   * @param deck the deck picture; nothing is read or found where the photo does not show it
   * @return the canopy, in the camera's own light
   */
  public static Canopy on(DeckImage deck) {
    return on(deck, place -> LeafModel.GREEN_LEAF);
  }

  /**
   * Decides how much of each pixel is leaf.
   *
   * @param deck the deck picture; nothing is read or found where the photo does not show it
   * @param models the colour model at each place of the deck; one that knows no open ground is
   *     taken for green leaf
   * @return the canopy, in the camera's own light
   */
  public static Canopy on(DeckImage deck, ModelMap models) {
    int width = deck.image().width();
    int height = deck.image().height();
    byte[] coverage = new byte[width * height];
    SeenBox box = SeenBox.of(deck);
    if (box.isEmpty()) {
      return new Canopy(width, height, coverage, EvenedLight.ofCamera(), new Canopy.Doubts(0, 0));
    }
    OpenGround ground = of(box);
    GroundModels own = GroundModels.of(deck, box, models);
    GroundEvidence evidence = ground.evidence();
    float[] share = SecondLook.share(evidence, ground.greenness.seen);
    own.decide(share, box, evidence);
    SecondLook.dropNew(share, evidence, ground.greenness);
    box.write(whole(share), coverage);
    return new Canopy(
        width,
        height,
        coverage,
        EvenedLight.ofCamera(),
        new Canopy.Doubts(ground.level.threshold(), ground.doubt(share)));
  }

  static OpenGround of(SeenBox box) {
    return new OpenGround(Greenness.of(box.rgb(), box.width(), box.height(), box.seen()));
  }

  /** Gathers the evidence of each pixel. */
  GroundEvidence evidence() {
    float[] colour = byColour();
    return new GroundEvidence(
        greenness,
        clamped(-1, MOST_CONTRAST),
        level.threshold(),
        new GroundEvidence.First(colour, first(colour)));
  }

  /** Decides by colour, gate, rims and parts. */
  private float[] first(float[] colour) {
    float[] share = new float[colour.length];
    float[] local = localLeaf();
    boolean[] core = new boolean[share.length];
    for (int i = 0; i < share.length; i++) {
      double gate = Sigmoid.of((contrast[i] - GATE) / STEP);
      double rim = Sigmoid.of((contrast[i] - RIM_SHARE * local[i]) / STEP);
      share[i] = greenness.seen[i] ? (float) (colour[i] * gate * rim) : 0;
      core[i] = share[i] > 0.5f && contrast[i] > CORE_SHARE * local[i];
    }
    boolean[] kept =
        new CrispParts(width, height, clamped(-1, MOST_CONTRAST), level.threshold()).keep(core);
    boolean[] near = BoxFilter.any(kept, width, height, RIM_PX);
    for (int i = 0; i < share.length; i++) {
      if (!near[i]) {
        share[i] = 0;
      }
    }
    return share;
  }

  /** Returns how surely each pixel is leaf by its colour, 0..1. */
  private float[] byColour() {
    float[] learned = new float[contrast.length];
    for (int i = 0; i < learned.length; i++) {
      learned[i] = table[greenness.cell[i]];
    }
    float[] share =
        new GuidedFilter(width, height, GUIDE_REACH_PX, GUIDE_STRENGTH)
            .smooth(clamped(0, 2), learned);
    for (int i = 0; i < share.length; i++) {
      share[i] = Math.max(0, Math.min(1, share[i]));
    }
    return share;
  }

  private float[] clamped(double least, double most) {
    float[] clamped = new float[contrast.length];
    for (int i = 0; i < clamped.length; i++) {
      clamped[i] = (float) Math.max(least, Math.min(most, contrast[i]));
    }
    return clamped;
  }

  /** Contrast of the leaf about each pixel, strong leaf counting most; 1 where there is none. */
  private float[] localLeaf() {
    float[] weight = new float[contrast.length];
    float[] weighted = new float[contrast.length];
    for (int i = 0; i < weight.length; i++) {
      weight[i] = (float) Math.max(0, Math.min(MOST_CONTRAST, contrast[i] - 1));
      weighted[i] = weight[i] * contrast[i];
    }
    float[] weights = BoxMean.of(weight, width, height, LOCAL_PX);
    float[] local = BoxMean.of(weighted, width, height, LOCAL_PX);
    for (int i = 0; i < local.length; i++) {
      local[i] = Math.max(1, local[i] / (weights[i] + 1e-6f));
    }
    return local;
  }

  private static float[] whole(float[] share) {
    float[] whole = new float[share.length];
    for (int i = 0; i < whole.length; i++) {
      whole[i] = Math.max(0, Math.min(1, 0.5f + STEEPNESS * (share[i] - 0.5f)));
    }
    return whole;
  }

  /** Share of the canopy whose contrast is near the threshold. */
  private double doubt(float[] share) {
    int near = 0;
    int all = 0;
    for (int i = 0; i < share.length; i++) {
      if (share[i] > 0.5f) {
        all++;
        near += contrast[i] < 1.25f ? 1 : 0;
      }
    }
    return all == 0 ? 0 : (double) near / all;
  }

  /** Greenness and colour cells of the pixels that are learned from. */
  private static final class Samples {
    private final float[] green;
    private final int[] cells;

    private Samples(float[] green, int[] cells) {
      this.green = green;
      this.cells = cells;
    }

    static Samples of(Greenness all) {
      float[] green = new float[all.green.length];
      int[] cells = new int[all.green.length];
      int n = 0;
      for (int y = 0; y < all.height; y += SAMPLE_STEP) {
        for (int x = 0; x < all.width; x += SAMPLE_STEP) {
          int i = y * all.width + x;
          if (all.seen[i]) {
            green[n] = all.green[i];
            cells[n++] = all.cell[i];
          }
        }
      }
      return new Samples(Arrays.copyOf(green, n), Arrays.copyOf(cells, n));
    }
  }
}
