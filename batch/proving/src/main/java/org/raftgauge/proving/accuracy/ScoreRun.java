// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.raftgauge.proving.accuracy.LookScore.Errors;
import org.raftgauge.proving.accuracy.LookScore.FalseArea;

/**
 * Scores answers against the truth, look by look.
 *
 * <p>Open means open by the truth, never by the run's own flag. A measurable site that the run
 * held, refused or flagged closed is a miss; up to 3 % of a look's sites may be missed for free,
 * every further miss enters the quantiles as an error of 100 %.
 */
public final class ScoreRun {
  /** Share of a look's sites that may be missed for free. */
  public static final double FREE_MISS_SHARE = 0.03;

  /** The look under which leaf and board cannot be told apart: refusing is right. */
  public static final String UNANSWERABLE = "purple-lamp";

  /** The row of all looks but that one. */
  public static final String ANSWERABLE = "all but purple-lamp";

  /** Visible area under which an overlapped plant cannot be judged by a relative error, cm2. */
  static final double LEAST_VISIBLE_CM2 = 1;

  private ScoreRun() {}

  /**
   * Scores all looks, in the order of their first site, all of them together as {@code all}, and
   * all but {@link #UNANSWERABLE} where there is that look.
   *
   * @param truth the sites
   * @param answers what the run says
   * @return the scores
   */
  public static List<LookScore> score(List<TruthSite> truth, Map<SiteKey, Answer> answers) {
    Map<String, List<TruthSite>> looks = new LinkedHashMap<>();
    for (TruthSite site : truth) {
      looks.computeIfAbsent(site.look(), look -> new ArrayList<>()).add(site);
    }
    List<LookScore> scores = new ArrayList<>();
    looks.forEach((look, sites) -> scores.add(scoreLook(look, sites, answers)));
    scores.add(scoreLook("all", truth, answers));
    if (looks.size() > 1 && looks.containsKey(UNANSWERABLE)) {
      scores.add(scoreLook(ANSWERABLE, answerable(truth), answers));
    }
    return scores;
  }

  /** Returns the sites of looks in which the question can be answered. */
  private static List<TruthSite> answerable(List<TruthSite> truth) {
    return truth.stream().filter(site -> !site.look().equals(UNANSWERABLE)).toList();
  }

  private static LookScore scoreLook(
      String look, List<TruthSite> sites, Map<SiteKey, Answer> answers) {
    List<TruthSite> open = sites.stream().filter(TruthSite::open).toList();
    List<TruthSite> overlapped =
        sites.stream()
            .filter(s -> s.planted() && !s.open() && s.visibleAreaCm2() >= LEAST_VISIBLE_CM2)
            .toList();
    List<TruthSite> empty = sites.stream().filter(s -> !s.planted()).toList();
    return new LookScore(
        look,
        errors(open, TruthSite::projectedAreaCm2, site -> projected(site, answers)),
        errors(
            overlapped, TruthSite::visibleAreaCm2, site -> answer(site, answers).visibleAreaCm2()),
        falseArea(empty, answers));
  }

  private static Answer answer(TruthSite site, Map<SiteKey, Answer> answers) {
    return answers.getOrDefault(site.key(), Answer.NONE);
  }

  private static OptionalDouble projected(TruthSite site, Map<SiteKey, Answer> answers) {
    Answer answer = answer(site, answers);
    return answer.closed() ? OptionalDouble.empty() : answer.projectedAreaCm2();
  }

  /** Gives the run's number for a site, or nothing. */
  private interface Reading {
    OptionalDouble of(TruthSite site);
  }

  private static Errors errors(
      List<TruthSite> sites, ToDoubleFunction<TruthSite> truth, Reading reading) {
    List<Double> sizes = new ArrayList<>();
    List<Double> sizesCm2 = new ArrayList<>();
    double sum = 0;
    for (TruthSite site : sites) {
      OptionalDouble answer = reading.of(site);
      if (answer.isPresent()) {
        double trueCm2 = truth.applyAsDouble(site);
        double error = answer.getAsDouble() / trueCm2 - 1;
        sum += error;
        sizes.add(Math.abs(error));
        sizesCm2.add(Math.abs(error) * trueCm2);
      }
    }
    int answered = sizes.size();
    int missed = sites.size() - answered;
    int counted = missed - Math.min(missed, (int) Math.floor(FREE_MISS_SHARE * sites.size()));
    sizes.addAll(Collections.nCopies(counted, 1.0));
    double bias = answered == 0 ? 0 : sum / answered;
    return new Errors(
        sites.size(),
        missed,
        bias,
        quantile(sizes, 0.5),
        quantile(sizes, 0.95),
        quantile(sizesCm2, 0.5),
        quantile(sizesCm2, 0.95));
  }

  private static FalseArea falseArea(List<TruthSite> sites, Map<SiteKey, Answer> answers) {
    List<Double> areas = new ArrayList<>();
    for (TruthSite site : sites) {
      answer(site, answers).projectedAreaCm2().ifPresent(areas::add);
    }
    int over = (int) areas.stream().filter(area -> area > 2).count();
    return new FalseArea(
        sites.size(), sites.size() - areas.size(), quantile(areas, 0.5), quantile(areas, 1), over);
  }

  /**
   * Returns a quantile, linear between the order statistics.
   *
   * <p>Source: Hyndman and Fan 1996, definition 7.
   *
   * @param values any order; none gives 0
   * @param share 0..1
   * @return the quantile
   */
  static double quantile(List<Double> values, double share) {
    if (values.isEmpty()) {
      return 0;
    }
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    double at = share * (sorted.size() - 1);
    int low = (int) Math.floor(at);
    int high = Math.min(sorted.size() - 1, low + 1);
    return sorted.get(low) + (at - low) * (sorted.get(high) - sorted.get(low));
  }
}
