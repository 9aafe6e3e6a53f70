// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.HoleNetwork;
import org.raftgauge.core.canopy.LeafModel;
import org.raftgauge.core.canopy.SegmentCanopy;
import org.raftgauge.core.measure.LitBoard;
import org.raftgauge.core.pixels.PointPx;

/** Teaches what tells leaf from plug in planting holes, from labelled boards. */
public final class HoleLessons {
  /** Pixels drawn of a board, so that each counts alike. */
  private static final int OF_BOARD = 1500;

  /** Networks, whose answers are averaged, and the size of each. */
  private static final int NETWORKS = 3;

  private static final FitNetwork.Size SIZE = new FitNetwork.Size(24, 12_000, 1e-3);

  /** Any; the same pixels are drawn each time. */
  private static final long SEED = 20_264;

  private final List<float[]> terms = new ArrayList<>();
  private final List<Boolean> leaf = new ArrayList<>();
  private final Random random = new Random(SEED);

  /**
   * Adds a board.
   *
   * @param board the board
   * @param labels what its photo's pixels show
   * @param model how leaf of its crop is told
   */
  public void add(LitBoard board, Labels labels, LeafModel model) {
    List<float[]> own = new ArrayList<>();
    List<Boolean> isLeaf = new ArrayList<>();
    int width = board.deck().image().width();
    SegmentCanopy.holes(
        board.deck(),
        board.layout(),
        board.light(),
        place -> model,
        (i, seen) -> {
          PointPx deck = new PointPx(i % width, Math.floorDiv(i, width));
          PointPx at = board.pose().toPhoto(board.deck().toMm(deck));
          Optional<Tissue> tissue =
              labels.at((int) Math.round(at.xPx()), (int) Math.round(at.yPx()));
          if (tissue.isPresent()) {
            own.add(seen.clone());
            isLeaf.add(tissue.get().isLeaf());
          }
        });
    for (int n = 0; n < OF_BOARD && !own.isEmpty(); n++) {
      int at = random.nextInt(own.size());
      terms.add(own.get(at));
      leaf.add(isLeaf.get(at));
    }
  }

  /** Returns how many pixels were drawn. */
  public int size() {
    return terms.size();
  }

  /**
   * Fits the network.
   *
   * @return the rows of its file, see {@link HoleNetwork}
   * @throws IllegalStateException if no pixel of both kinds was drawn
   */
  public String fit() {
    if (!leaf.contains(true) || !leaf.contains(false)) {
      throw new IllegalStateException("there must be boards that show both leaf and plugs");
    }
    float[][] x = terms.stream().map(float[]::clone).toArray(float[][]::new);
    boolean[] isLeaf = new boolean[x.length];
    float[] weight = new float[x.length];
    float[] known = new float[x.length];
    for (int i = 0; i < x.length; i++) {
      isLeaf[i] = leaf.get(i);
      weight[i] = 1;
      known[i] = HoleNetwork.ruled(terms.get(i));
    }
    Cases cases = new Cases(x, isLeaf, weight, known);
    double[][] range = cases.normalise(HoleNetwork.MOST);
    StringBuilder text = new StringBuilder();
    for (int n = 0; n < NETWORKS; n++) {
      FitNetwork fitted = FitNetwork.to(cases, SIZE, SEED + n);
      text.append(HoleNetwork.BEGIN).append('\n').append(row(range[0])).append(row(range[1]));
      for (double[] unit : fitted.units()) {
        text.append(row(unit));
      }
      text.append(row(fitted.output()));
    }
    return text.toString();
  }

  private static String row(double[] values) {
    return DoubleStream.of(values)
        .mapToObj(v -> String.format(Locale.ROOT, "%.4f", v))
        .collect(Collectors.joining(" ", "", "\n"));
  }
}
