// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;

/**
 * Which way round a board lay tonight whose grid looks the same after half a turn, told from the
 * pattern of areas of an evening before.
 *
 * <p>Model: {@code ln(a + 1) tonight = g + ln(a + 1) before + e} at every site, {@code g} the
 * growth common to all, {@code e} Student-t with 4 degrees of freedom, so that a plant that died
 * overnight does not decide, and an unknown scale of at least 0.03. Both ways round are fitted by
 * maximum likelihood (EM, as in Lange, Little and Taylor 1989, doi:10.1080/01621459.1989.10478852)
 * to the same sites; their likelihood ratio, with the exponent {@code (n - 2) / n} for the two
 * fitted numbers, is the odds. The 1 cm2 added keeps empty sites finite. The scale's lower bound
 * and the odds asked for are our own choice.
 *
 * @param answer what was decided
 * @param log10Odds log10 of the odds for straight over turned; above 0 speaks for straight
 * @param sites number of sites compared
 */
public record HalfTurn(Answer answer, double log10Odds, int sites) {

  /** Odds from which a way round is believed: 100 to 1. */
  public static final double LOG10_ODDS_NEEDED = 2;

  private static final int FEWEST_SITES = 4;
  private static final double DEGREES = 4;
  private static final double SMALLEST_SCALE = 0.03;
  private static final int STEPS = 60;

  /** Which way round. */
  public enum Answer {
    /** As the sites were named. */
    STRAIGHT,
    /** The other way round: each site is the one opposite. */
    TURNED,
    /** Cannot be told; someone must be asked. */
    AMBIGUOUS
  }

  /**
   * Compares tonight's areas with those of an evening before.
   *
   * @param grid the board's grid
   * @param tonight projected areas by site as named tonight, cm2, 0 or more; sites that are held
   *     are left out
   * @param before the same of an evening whose way round is known
   * @return which way round the board lies tonight
   */
  public static HalfTurn settle(
      SiteGrid grid, Map<SiteId, Double> tonight, Map<SiteId, Double> before) {
    List<Double> straight = new ArrayList<>();
    List<Double> turned = new ArrayList<>();
    for (SiteId site : new TreeSet<>(tonight.keySet())) {
      SiteId opposite = opposite(grid, site);
      if (before.containsKey(site) && before.containsKey(opposite)) {
        double now = Math.log1p(tonight.get(site));
        straight.add(now - Math.log1p(before.get(site)));
        turned.add(now - Math.log1p(before.get(opposite)));
      }
    }
    int n = straight.size();
    if (n < FEWEST_SITES) {
      return new HalfTurn(Answer.AMBIGUOUS, 0, n);
    }
    double ratio = (logLikelihood(straight) - logLikelihood(turned)) * (n - 2) / n;
    double log10Odds = ratio / Math.log(10);
    return new HalfTurn(answer(log10Odds), log10Odds, n);
  }

  /**
   * Returns the site that takes a site's place after half a turn.
   *
   * @param grid the board's grid
   * @param site a site of it
   * @return the site opposite
   */
  public static SiteId opposite(SiteGrid grid, SiteId site) {
    return new SiteId(grid.rows() - 1 - site.row(), grid.columns() - 1 - site.column());
  }

  /** Says whether there were enough sites to compare. */
  boolean compared() {
    return sites >= FEWEST_SITES;
  }

  /** Returns the answer that odds give. */
  static Answer answer(double log10Odds) {
    if (Math.abs(log10Odds) < LOG10_ODDS_NEEDED) {
      return Answer.AMBIGUOUS;
    }
    return log10Odds > 0 ? Answer.STRAIGHT : Answer.TURNED;
  }

  /** Returns the largest log likelihood over centre and scale, up to a constant. */
  private static double logLikelihood(List<Double> differences) {
    double centre = median(differences);
    double scale = Math.max(SMALLEST_SCALE, spread(differences, centre));
    for (int step = 0; step < STEPS; step++) {
      double weights = 0;
      double sum = 0;
      for (double d : differences) {
        double w = weight(d, centre, scale);
        weights += w;
        sum += w * d;
      }
      centre = sum / weights;
      double squares = 0;
      for (double d : differences) {
        squares += weight(d, centre, scale) * (d - centre) * (d - centre);
      }
      scale = Math.max(SMALLEST_SCALE, Math.sqrt(squares / differences.size()));
    }
    double logLikelihood = 0;
    for (double d : differences) {
      double z = (d - centre) / scale;
      logLikelihood -= (DEGREES + 1) / 2 * Math.log1p(z * z / DEGREES) + Math.log(scale);
    }
    return logLikelihood;
  }

  private static double weight(double d, double centre, double scale) {
    double z = (d - centre) / scale;
    return (DEGREES + 1) / (DEGREES + z * z);
  }

  private static double spread(List<Double> differences, double centre) {
    double squares = differences.stream().mapToDouble(d -> (d - centre) * (d - centre)).sum();
    return Math.sqrt(squares / differences.size());
  }

  private static double median(List<Double> values) {
    List<Double> sorted = values.stream().sorted().toList();
    int half = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(half)
        : (sorted.get(half - 1) + sorted.get(half)) / 2;
  }
}
