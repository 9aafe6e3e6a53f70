// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tells leaf from what fills the planting holes: what the rules say of a pixel, and what the mean
 * of several networks adds to that by {@link HoleTerms}. It comes with the program as a plain file,
 * taught from rendered boards whose fillings were drawn at random ({@code prove holes}).
 *
 * <p>The file: lines of numbers, but for those that begin with {@code #}; for each network the line
 * {@value #BEGIN}, the terms' middles, their spreads, a line for each unit with its weights of the
 * terms and its constant, and last the weights of the units and a constant.
 */
public final class HoleNetwork {
  /** Number of terms that are weighed at a pixel. */
  public static final int TERMS = HoleTerms.TERMS;

  /** Terms further than so many spreads from their middle count as so far. */
  public static final double MOST = 4;

  /** Begins a network in the file. */
  public static final String BEGIN = "network";

  /** Log odds of leaf where the rules score e times the threshold (working value). */
  private static final double PER_RATIO = 4;

  /** The networks add no more than this, log odds (working value). */
  private static final float MOST_ADDED = 3.5f;

  /** Scores below this share of the threshold speak no clearer against leaf. */
  private static final double LEAST_RULED = 0.15;

  private static final String FILE = "hole-network.txt";

  private final List<Network> networks;

  private HoleNetwork(List<Network> networks) {
    this.networks = networks;
  }

  /** The one that comes with the program, read when it is first asked for. */
  private static final class Shipped {
    private static final HoleNetwork NETWORK = read();
  }

  /** Returns the one that comes with the program. */
  static HoleNetwork shipped() {
    return Shipped.NETWORK;
  }

  private static HoleNetwork read() {
    try (InputStream in = HoleNetwork.class.getResourceAsStream(FILE)) {
      if (in == null) {
        throw new IllegalStateException("broken program: " + FILE + " is missing");
      }
      return of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new IllegalStateException("broken program: " + FILE + " cannot be read", e);
    }
  }

  /** Reads a file's text. */
  static HoleNetwork of(String text) {
    List<List<double[]>> all = new ArrayList<>();
    for (String line : text.lines().filter(l -> !l.startsWith("#") && !l.isBlank()).toList()) {
      if (line.equals(BEGIN)) {
        all.add(new ArrayList<>());
      } else if (!all.isEmpty()) {
        all.get(all.size() - 1).add(row(line));
      }
    }
    if (all.isEmpty()) {
      throw new IllegalStateException("broken program: " + FILE + " holds no network");
    }
    return new HoleNetwork(all.stream().map(HoleNetwork::network).toList());
  }

  private static Network network(List<double[]> rows) {
    int units = rows.size() - 3;
    boolean sound = units > 0 && rows.get(0).length == TERMS && rows.get(1).length == TERMS;
    for (int j = 2; sound && j < units + 2; j++) {
      sound = rows.get(j).length == TERMS + 1;
    }
    if (!sound || rows.get(units + 2).length != units + 1) {
      throw new IllegalStateException("broken program: the rows of " + FILE + " do not fit");
    }
    double[][] range = {rows.get(0), rows.get(1)};
    double[][] weights = rows.subList(2, units + 2).toArray(double[][]::new);
    return new Network(range, weights, rows.get(units + 2), MOST);
  }

  private static double[] row(String line) {
    return Arrays.stream(line.trim().split(" +")).mapToDouble(Double::parseDouble).toArray();
  }

  /**
   * Says what the rules alone make of a pixel.
   *
   * @param terms its terms
   * @return log odds of leaf
   */
  public static float ruled(float[] terms) {
    return (float) (PER_RATIO * Math.log(Math.max(LEAST_RULED, terms[HoleTerms.RULED])));
  }

  /** Returns the log odds of leaf of a pixel of a hole. */
  float odds(float[] terms) {
    float sum = 0;
    for (Network network : networks) {
      sum += network.of(terms);
    }
    float added = sum / networks.size();
    return ruled(terms) + Math.max(-MOST_ADDED, Math.min(MOST_ADDED, added));
  }
}
