// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.List;
import org.raftgauge.core.book.TaughtGround;

/** Scores pixels of open ground as a taught model says, see {@link TaughtGround}. Read only. */
public final class GroundNetwork {
  private final Network network;

  /**
   * Sets up a network.
   *
   * @param ground as the model's file says it
   */
  public GroundNetwork(TaughtGround ground) {
    this.network =
        new Network(
            new double[][] {doubles(ground.middle()), doubles(ground.spread())},
            ground.units().stream().map(GroundNetwork::doubles).toArray(double[][]::new),
            doubles(ground.output()),
            TaughtGround.MOST);
  }

  private static double[] doubles(List<Double> values) {
    return values.stream().mapToDouble(v -> v).toArray();
  }

  /**
   * Scores a pixel.
   *
   * @param terms its {@link TaughtGround#TERMS} terms
   * @return log odds of leaf
   */
  public double score(float[] terms) {
    return network.of(terms);
  }
}
